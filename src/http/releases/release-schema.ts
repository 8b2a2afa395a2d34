import { z } from 'zod';
import { RELEASE_MODES } from '../../domain/release/policy.js';
import { UNIVERSES } from '../../domain/release/table-definition.js';
import { dateField, dateShown, idField, lineField, reasonField } from '../schema/fields.js';

/** What a lead asks to be released. */
export const NewRelease = z
  .strictObject({
    commissionerId: idField,
    period: z.string().max(40).describe('A financial quarter `2026-27-Q1` or a financial year `2026-27`'),
    asAt: dateField.optional().describe('Data cut; today where it is left out'),
    mode: z
      .enum(RELEASE_MODES)
      .default('rounded')
      .describe('`exact` only for a recipient named in an agreement'),
    agreement: lineField(200).optional().describe('The agreement that names the recipient'),
    tables: z
      .record(z.string().max(80), z.string().max(40))
      .default({})
      .describe(
        'Code list by table, or `left-out`; a table that is not named has its finest, or merged groups where few people are counted',
      ),
    mergeAsProposed: z
      .boolean()
      .default(false)
      .describe('Take up what the attack proposes, merging and leaving out, until it finds nothing'),
    corrects: z
      .strictObject({ number: z.int().min(1), reason: reasonField })
      .optional()
      .describe('The release that this one corrects, and why'),
  })
  .meta({ id: 'NewRelease' });

export const Withdrawal = z.strictObject({ reason: reasonField }).meta({ id: 'ReleaseWithdrawal' });

export const ReleaseParams = z.strictObject({
  number: z
    .string()
    .regex(/^[1-9]\d{0,8}$/)
    .transform(Number)
    .describe('Number of the release'),
});

export const ReleaseEntryShown = z
  .strictObject({
    number: z.int(),
    teamName: z.string(),
    commissionerId: z.string(),
    commissionerName: z.string(),
    period: z.string(),
    mode: z.enum(RELEASE_MODES),
    releasedAt: z.string(),
    digest: z.string().describe('SHA-256 of the canonical JSON'),
    corrects: z.int().nullable(),
    correctedBy: z.int().nullable(),
    withdrawn: z.strictObject({ at: z.string(), reason: z.string() }).nullable(),
  })
  .meta({ id: 'ReleaseEntry' });

const Count = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('shown'), value: z.int() }),
    z.strictObject({ kind: z.literal('hidden') }),
  ])
  .meta({ id: 'ReleasedCount' });

const Target = z.strictObject({ percent: z.number(), source: z.string() });

const Share = z.strictObject({
  id: z.string(),
  title: z.string(),
  ruleId: z.string(),
  denominator: z.int().nullable(),
  percent: z.int().nullable().describe('Of printed counts'),
  interval: z.strictObject({ low: z.int(), high: z.int() }).nullable(),
  whyNot: z.enum(['hidden', 'too-few']).nullable(),
  target: Target.nullable(),
});

const Cell = z.strictObject({
  id: z.string(),
  words: z.string(),
  count: Count,
  within: z.string().nullable(),
  role: z.enum(['cell', 'row-total', 'column-total']),
  row: z.string().nullable(),
  column: z.string().nullable(),
});

/** A release as it leaves the team. */
export const ReleaseDocumentShown = z
  .strictObject({
    format: z.literal('tidemark-release@1'),
    number: z.int(),
    teamName: z.string(),
    commissionerId: z.string(),
    commissionerName: z.string(),
    period: z.strictObject({
      label: z.string(),
      kind: z.enum(['quarter', 'year']),
      firstDay: dateShown,
      lastDay: dateShown,
    }),
    dataCut: dateShown,
    releasedOn: dateShown,
    policy: z.strictObject({
      mode: z.enum(RELEASE_MODES),
      hidesBelow: z.int(),
      roundingBase: z.int().nullable(),
      minimumWidth: z.int(),
      minimumForPercent: z.int(),
      minimumForMeans: z.int(),
    }),
    settingsVersion: z.int(),
    agreement: z.string().nullable(),
    correction: z
      .strictObject({
        ofNumber: z.int(),
        reason: z.string(),
        changes: z
          .array(z.strictObject({ tableTitle: z.string(), words: z.string(), before: Count, after: Count }))
          .describe('Counts that are shown in both and differ'),
      })
      .nullable(),
    totals: z.array(z.strictObject({ universe: z.enum(UNIVERSES), words: z.string(), count: Count })),
    tables: z.array(
      z.strictObject({
        id: z.string(),
        title: z.string(),
        explanation: z.string(),
        universe: z.enum(UNIVERSES),
        kind: z.enum(['one-way', 'two-way']),
        cells: z.array(Cell),
        shares: z.array(Share),
      }),
    ),
    summaries: z.array(
      z.strictObject({
        id: z.string(),
        title: z.string(),
        unit: z.string(),
        n: z.int(),
        kind: z.enum(['mean-change', 'median-wait']),
        value: z.int(),
        sd: z.int().nullable(),
        quartiles: z.strictObject({ lower: z.int(), upper: z.int() }).nullable(),
      }),
    ),
    leftOut: z.array(z.string()),
    definitions: z.array(
      z.strictObject({
        ruleId: z.string(),
        numerator: z.string(),
        denominator: z.string(),
        exclusions: z.string().nullable(),
        source: z.string(),
      }),
    ),
  })
  .meta({ id: 'ReleaseDocument' });

const Exposure = z.strictObject({
  tableId: z.string().nullable(),
  tableTitle: z.string(),
  figures: z.string(),
  low: z.int(),
  high: z.int().nullable(),
  remedy: z.strictObject({ kind: z.enum(['merge', 'leave-out', 'round-or-wait']), words: z.string() }),
});

/** A draft, for the lead only. */
export const ReleasePreviewShown = z
  .strictObject({
    document: ReleaseDocumentShown,
    hidden: z.array(
      z.strictObject({
        tableId: z.string(),
        cellId: z.string(),
        words: z.string(),
        count: z.int().describe('As counted; never leaves the team'),
        because: z.enum(['small', 'protects-others']),
      }),
    ),
    tables: z.record(z.string(), z.string()).describe('Code lists chosen or taken up'),
    attack: z.strictObject({
      isPassed: z.boolean(),
      targets: z.int(),
      releases: z.array(z.string()),
      trouble: z.string().nullable(),
      exposures: z.array(Exposure),
    }),
  })
  .meta({ id: 'ReleasePreview' });
