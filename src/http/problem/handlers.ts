import type {
  FastifyError,
  FastifyInstance,
  FastifyReply,
  FastifyRequest,
  FastifySchemaValidationError,
} from 'fastify';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Fault } from '../../domain/refusal/refusal.js';
import { notWritable } from '../../usecases/not-writable.js';
import type { NotWritable } from '../../usecases/not-writable.js';
import { problemFor } from './problem-for.js';
import { sendProblem } from './problem.js';
import type { ProblemBody } from './problem.js';

/** Turns every error into a problem document; inner texts go to the log only. */
export function installProblemHandlers(app: FastifyInstance): void {
  app.setErrorHandler(answerError);
}

/** A problem document for an address that is not there. */
export function answerUnknownAddress(_request: FastifyRequest, reply: FastifyReply): FastifyReply {
  return sendProblem(reply, {
    type: '/problems/not-found',
    title: 'Not found',
    status: 404,
    detail: 'There is nothing at this address.',
  });
}

/** A problem document for an error: of a handler, or of the server before any route was found. */
export function answerError(error: FastifyError, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  if (hasZodFastifySchemaValidationErrors(error)) {
    const isBody = error.validationContext === 'body';
    const faults = error.validation.flatMap((fault) => faultsOf(fault, isBody));
    return sendProblem(reply, {
      ...MALFORMED,
      detail: 'Nothing was stored. Each field that is wrong is named.',
      errors: [...faults],
    });
  }
  const status = error.statusCode ?? 500;
  const known = KNOWN[error.code];
  if (known !== undefined) return sendProblem(reply, known);
  if (status >= 400 && status < 500) {
    return sendProblem(reply, { ...MALFORMED, status: 400, detail: 'The request could not be read.' });
  }
  const reason = notWritable(error);
  if (reason !== null) {
    request.log.error({ code: error.code }, 'the record cannot be written');
    return sendProblem(reply, NOT_WRITABLE[reason]);
  }
  request.log.error({ err: { name: error.name, code: error.code, stack: error.stack } }, 'request failed');
  return sendProblem(reply, {
    type: '/problems/internal',
    title: 'Something went wrong',
    status: 500,
    detail: 'The service failed; nothing was stored. The id of the request is in the log.',
  });
}

/** What zod found at one place; an unknown key is pointed at itself, not at the object that holds it. */
function faultsOf(fault: FastifySchemaValidationError, isBody: boolean): readonly Fault[] {
  const base = fault.instancePath === '/' ? '' : fault.instancePath;
  const keys = UnknownKeys.safeParse(fault.params);
  const pointers = keys.success ? keys.data.keys.map((key) => `${base}/${escapePointer(key)}`) : [base];
  return pointers.map((pointer) => ({
    pointer: isBody ? pointer : pointer.replace(/^\//, ''),
    code: fault.keyword.replaceAll('_', '-'),
    message: fault.message ?? 'This value is not accepted.',
  }));
}

const UnknownKeys = z.object({ keys: z.array(z.string()) });

function escapePointer(key: string): string {
  return key.slice(0, 40).replaceAll('~', '~0').replaceAll('/', '~1');
}

const MALFORMED: Omit<ProblemBody, 'detail'> = {
  type: '/problems/malformed-request',
  title: 'Malformed request',
  status: 400,
};

const NOT_WRITABLE: Readonly<Record<NotWritable, ProblemBody>> = {
  full: {
    type: '/problems/record-not-writable',
    title: 'The record cannot be written',
    status: 507,
    detail: 'Nothing was stored: the disk of the record is full. What is held can be read.',
  },
  'not-writable': {
    type: '/problems/record-not-writable',
    title: 'The record cannot be written',
    status: 503,
    detail: 'Nothing was stored: the record takes no writes at this moment. Tell who runs the service.',
  },
};

const KNOWN: Readonly<Record<string, ProblemBody>> = {
  REQUEST_KEY_TAKEN: problemFor({ code: 'answer-not-kept', existingId: null }),
  FST_ERR_CTP_INVALID_MEDIA_TYPE: {
    type: '/problems/unsupported-media-type',
    title: 'Unsupported media type',
    status: 415,
    detail: 'Send JSON with the content type application/json.',
  },
  FST_ERR_CTP_BODY_TOO_LARGE: {
    type: '/problems/too-large',
    title: 'Too large',
    status: 413,
    detail: 'The body is larger than 256 KiB.',
  },
  FST_ERR_CTP_EMPTY_JSON_BODY: { ...MALFORMED, detail: 'The body is empty. Send a JSON object.' },
  FST_ERR_CTP_INVALID_JSON_BODY: { ...MALFORMED, detail: 'The body is not valid JSON.' },
};
