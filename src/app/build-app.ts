import fastifySwagger from '@fastify/swagger';
import fastifySwaggerUi from '@fastify/swagger-ui';
import fastify, { LogController } from 'fastify';
import type { FastifyBaseLogger, FastifyReply, FastifyRequest } from 'fastify';
import {
  jsonSchemaTransform,
  jsonSchemaTransformObject,
  serializerCompiler,
  validatorCompiler,
} from 'fastify-type-provider-zod';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { randomUUID } from 'node:crypto';
import type { App, Context } from '../http/app-types.js';
import { accountHelpRoutes } from '../http/accounts/account-help-routes.js';
import { accountRoutes } from '../http/accounts/account-routes.js';
import { tokenRoutes } from '../http/accounts/token-routes.js';
import { assessmentRoutes } from '../http/assessments/assessment-routes.js';
import { calculationRoutes } from '../http/calculations/calculation-routes.js';
import { sourceRoutes } from '../http/catalogue/source-routes.js';
import { normRoutes } from '../http/catalogue/norm-routes.js';
import { auditRoutes } from '../http/audit/audit-routes.js';
import { catalogueRoutes } from '../http/catalogue/catalogue-routes.js';
import { installGuard } from '../http/guard.js';
import { installRequestKeys } from '../http/request-keys.js';
import { historyRoutes } from '../http/history/history-routes.js';
import { installAnswerHeaders, installDocumentationHeaders } from '../http/headers.js';
import { mergeRoutes } from '../http/patients/merge-routes.js';
import { patientRoutes } from '../http/patients/patient-routes.js';
import { answerError, answerUnknownAddress, installProblemHandlers } from '../http/problem/handlers.js';
import { problemFor } from '../http/problem/problem-for.js';
import { inErrorRoutes } from '../http/corrections/in-error-routes.js';
import { referralEventRoutes } from '../http/referrals/event-routes.js';
import { referralRoutes } from '../http/referrals/referral-routes.js';
import { entriesInErrorRoutes } from '../http/reports/entries-in-error-routes.js';
import { figureRoutes } from '../http/reports/figure-routes.js';
import { reportFileRoutes } from '../http/reports/report-file-routes.js';
import { reportRoutes } from '../http/reports/report-routes.js';
import { releaseFileRoutes } from '../http/releases/release-file-routes.js';
import { releaseRoutes } from '../http/releases/release-routes.js';
import { tellUntoldReads } from '../usecases/audit/untold-reads.js';
import { installMessages } from '../http/schema/messages.js';
import { serviceRoutes } from '../http/service/service-routes.js';
import { diaryRoutes } from '../http/diary/diary-routes.js';
import { safetyRoutes } from '../http/safety/safety-routes.js';
import { settingsRoutes } from '../http/settings/settings-routes.js';
import { retentionRoutes } from '../http/retention/retention-routes.js';
import { sessionRoutes } from '../http/sessions/session-routes.js';
import { exportRoutes } from '../http/exports/export-routes.js';
import { listFileRoutes } from '../http/exports/list-file-routes.js';
import { importRoutes } from '../http/imports/import-routes.js';
import { draftRoutes } from '../http/drafts/draft-routes.js';
import { fhirRoutes } from '../http/fhir/fhir-routes.js';
import { letterRoutes } from '../http/letters/letter-routes.js';
import { workListRoutes } from '../http/work-list/work-list-routes.js';
import { tidySchemas, withAnswersNamed } from './described.js';
import { installAssets } from '../web/assets.js';
import { installWeb } from '../web/install-web.js';
import type { Web, WebApp } from '../web/web.js';

/** How much the service writes to its log. */
export type LogLevel = 'info' | 'warn' | 'silent';

/** What an operator may add to the service. */
export interface ServiceOptions {
  /** A provider of OpenID Connect by which people may sign in; null for none. */
  readonly oidc?: Web['oidc'];
  /** Proxies that are believed when they say for whom they ask; else the connection counts. */
  readonly trustedProxies?: readonly string[];
  /** Key of the pseudonyms in files for analysis; without one each file has pseudonyms of its own. */
  readonly pseudonymKey?: Uint8Array | null;
}

const BODY_LIMIT_BYTES = 256 * 1024;
const API_PREFIX = '/api/v1';

/**
 * Builds the service; it does not listen yet.
 *
 * @param context the record, the clock and the source of ids
 */
export async function buildApp(
  context: Context,
  logLevel: LogLevel,
  { oidc = null, trustedProxies = [], pseudonymKey = null }: ServiceOptions = {},
): Promise<App> {
  const app: App = fastify({
    bodyLimit: BODY_LIMIT_BYTES,
    trustProxy: trustedProxies.length === 0 ? false : [...trustedProxies],
    requestTimeout: 30_000,
    keepAliveTimeout: 5_000,
    // The log names the route, never the address that was asked for: an address may hold what somebody typed.
    logController: new LogController({ disableRequestLogging: true }),
    logger: logLevel === 'silent' ? false : { level: logLevel },
    genReqId: () => randomUUID(),
    frameworkErrors: (error, request, reply) => {
      answerError(error, request, reply);
      logAnswer(request, reply);
    },
  }).withTypeProvider<ZodTypeProvider>();
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  // Only JSON is taken; the framework would read plain text as well.
  app.removeContentTypeParser('text/plain');
  installMessages();
  installProblemHandlers(app);
  logRequests(app);
  keepUntoldReads(app, context);
  await describeApi(app);
  await app.register(
    async (scope) => {
      const api = scope.withTypeProvider<ZodTypeProvider>();
      installAnswerHeaders(api);
      installGuard(api, context);
      installRequestKeys(api, context);
      patientRoutes(api, context);
      referralRoutes(api, context);
      referralEventRoutes(api, context);
      inErrorRoutes(api, context);
      mergeRoutes(api, context);
      assessmentRoutes(api, context);
      sessionRoutes(api, context);
      workListRoutes(api, context);
      draftRoutes(api, context);
      letterRoutes(api, context);
      fhirRoutes(api, context);
      diaryRoutes(api, context);
      safetyRoutes(api, context);
      reportRoutes(api, context);
      reportFileRoutes(api, context);
      figureRoutes(api, context);
      entriesInErrorRoutes(api, context);
      releaseRoutes(api, context);
      releaseFileRoutes(api, context);
      auditRoutes(api, context);
      accountRoutes(api, context);
      accountHelpRoutes(api, context);
      tokenRoutes(api, context);
      importRoutes(api, context);
      exportRoutes(api, context, pseudonymKey);
      listFileRoutes(api, context);
      settingsRoutes(api, context);
      retentionRoutes(api, context);
      historyRoutes(api, context);
      catalogueRoutes(api);
      normRoutes(api);
      sourceRoutes(api);
      calculationRoutes(api);
      serviceRoutes(api, context);
    },
    { prefix: API_PREFIX },
  );
  await app.register(installAssets);
  await app.register((scope: WebApp) =>
    installWeb(scope, {
      context,
      oidc,
      pseudonymKey,
      wordsFor: problemFor,
      answerNotFound: answerUnknownAddress,
    }),
  );
  for (const path of ['/health', '/docs', '/openapi.json']) {
    app.get(path, { schema: { hide: true } }, (_request, reply) =>
      reply.redirect(`${API_PREFIX}${path}`, 308),
    );
  }
  return app;
}

async function describeApi(app: App): Promise<void> {
  await app.register(fastifySwagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Tidemark',
        version: '1',
        description:
          'Outcomes and audit for community pulmonary rehabilitation teams. The service records and computes; it does not prescribe. Decisions belong to registered clinicians under local policy.',
      },
      servers: [{ url: '/', description: 'This service' }],
      components: { securitySchemes: { bearer: { type: 'http', scheme: 'bearer' } } },
      security: [{ bearer: [] }],
    },
    transform: jsonSchemaTransform,
    transformObject: describedTidily,
  });
  // Every asset of the documentation comes from the package, so that it opens without a network.
  await app.register(async (scope: App) => {
    installDocumentationHeaders(scope);
    await scope.register(fastifySwaggerUi, {
      routePrefix: `${API_PREFIX}/docs`,
      uiConfig: { deepLinking: true, validatorUrl: null },
    });
  });
}

/** The description as it is read by people and programs: each answer named, no schema that nothing refers to. */
const describedTidily: typeof jsonSchemaTransformObject = (document) => {
  const described = jsonSchemaTransformObject(document);
  const { paths, components } = { paths: undefined, components: undefined, ...described };
  const { schemas, ...others } = { schemas: {}, ...components };
  const tidy = tidySchemas({ paths: withAnswersNamed(paths), schemas });
  return Object.assign(described, { paths: tidy.paths, components: { ...others, schemas: tidy.schemas } });
};

function logRequests(app: App): void {
  app.addHook('onResponse', async (request, reply) => logAnswer(request, reply));
}

function logAnswer(request: FastifyRequest, reply: FastifyReply): void {
  const log: FastifyBaseLogger = request.log;
  const { method } = request;
  const { url: route } = request.routeOptions;
  log.info({ method, route, status: reply.statusCode, ms: Math.round(reply.elapsedTime) }, 'answered');
}

/** Readings that the trail has not been told of stand in the log, as ids; the last chance to tell them is the end. */
function keepUntoldReads(app: App, context: Context): void {
  context.untold.listen(({ occurredAt, actor, event }) => {
    const { action, patientId, referralId, subjectId, details = {} } = event;
    const ids = Object.fromEntries(Object.entries(details).filter(([name]) => /Ids?$/.test(name)));
    const { accountId } = actor;
    const told = { occurredAt, action, accountId, patientId, referralId, subjectId, ids };
    app.log.warn(told, 'a reading waits for the audit trail');
  });
  app.addHook('onClose', async () => {
    if (!(await tellUntoldReads(context))) app.log.error('readings were never told to the audit trail');
  });
}
