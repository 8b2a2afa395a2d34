import { z } from 'zod';
import { DESATURATION_DEFINITION_IDS } from '../../domain/safety/desaturation.js';
import { RESTING_LIMITS_IDS } from '../../domain/safety/resting-limits.js';
import { COMPLETION_READINGS, SECOND_FACTOR_RULES } from '../../domain/settings/team-settings.js';
import { changeSettings, readSettings } from '../../usecases/settings/change-settings.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { basedOn, IfMatchHeaders, tagged } from '../conditional.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { lineField, numberField, reasonField } from '../schema/fields.js';

const tags = ['settings'];
const id = z.string().max(80);

const Choices = {
  completionReading: z.enum(COMPLETION_READINGS).describe('The headline; all four readings are always shown'),
  plannedSessions: numberField.describe('Where a referral does not say otherwise'),
  plannedWeeks: numberField,
  equations: z.record(id, id).describe('Prediction equation by measure'),
  thresholds: z
    .record(id, id)
    .describe('Improvement threshold by measure; else the default of the catalogue'),
  thresholdsByDiagnosis: z
    .record(z.string().max(160), id)
    .describe('By measure/diagnosis; overrides thresholds'),
  targets: z
    .record(id, z.strictObject({ percent: numberField, source: lineField(300) }))
    .describe('Target by indicator, with where it comes from'),
  restingLimits: z.enum(RESTING_LIMITS_IDS),
  desaturationDefinition: z.enum(DESATURATION_DEFINITION_IDS),
  leadSecondFactor: z
    .enum(SECOND_FACTOR_RULES)
    .describe('Whether leads must show a second factor when they sign in'),
  retentionYears: numberField.describe(
    'Whole years for which a record is kept after its last contact, 1 to 100. 8 is common practice in England for adults (from memory: check before use); local policy decides',
  ),
} as const;

const Disclosure = z
  .strictObject({
    roundedHidesBelow: numberField.describe('Rounded releases hide counts from 1 to one less'),
    roundingBase: numberField,
    exactHidesBelow: numberField.describe('Exact releases hide counts from 1 to one less'),
    minimumWidth: numberField.describe('How wide the interval of a hidden count must stay'),
    minimumForPercent: numberField,
    minimumForMeans: numberField,
  })
  .describe('What summaries for commissioners hide, round and leave out; in people');

const NewSettings = z
  .strictObject({
    reason: reasonField,
    ...Choices,
    disclosure: Disclosure.optional().describe('Stays as it is where it is left out'),
  })
  .meta({ id: 'NewSettings' });
const SettingsShown = z
  .strictObject({
    version: z.int().describe('0 while the defaults hold'),
    ...Choices,
    disclosure: Disclosure,
  })
  .meta({ id: 'Settings' });

/** Routes of the team's versioned settings. */
export function settingsRoutes(app: App, context: Context): void {
  app.get(
    '/settings',
    {
      schema: {
        operationId: 'readSettings',
        summary: "The team's choices: completion, equations, thresholds, targets, limits",
        tags,
        response: { 200: SettingsShown, ...problemResponses(401, 403) },
      },
    },
    async (request, reply) => {
      const { version, settings } = await readSettings(context, teamMember(request));
      return tagged(reply, { version }).send({ version, ...settings });
    },
  );

  app.put(
    '/settings',
    {
      schema: {
        operationId: 'changeSettings',
        summary: "Add a new version of the team's choices",
        description: 'Former versions stay. A report prints the version it used.',
        tags,
        headers: IfMatchHeaders,
        body: NewSettings,
        response: { 200: SettingsShown, ...problemResponses(400, 401, 403, 412, 413, 415, 422, 428) },
      },
    },
    async (request, reply) => {
      const { reason, ...chosen } = request.body;
      const former = await readSettings(context, teamMember(request));
      const settings = { ...chosen, disclosure: chosen.disclosure ?? former.settings.disclosure };
      const base = basedOn(request);
      if (base.kind === 'refused') return sendProblem(reply, problemFor(base.refusal));
      const change = { settings, reason, basedOn: base.value };
      const outcome = await changeSettings(context, teamMember(request), change);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return tagged(reply, outcome.value).send({ version: outcome.value.version, ...outcome.value.settings });
    },
  );
}
