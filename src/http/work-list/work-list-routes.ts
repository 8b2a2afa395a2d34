import { z } from 'zod';
import { DIAGNOSES } from '../../domain/referral/closed-sets.js';
import { WORK_GROUPS } from '../../domain/work-list/work-list.js';
import { readWorkList } from '../../usecases/work-list/read-work-list.js';
import type { WorkList, WorkListEntry } from '../../usecases/work-list/work-list-model.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemResponses } from '../problem/problem.js';
import { dateShown, idField } from '../schema/fields.js';

const PersonShown = z.strictObject({ id: z.string(), name: z.string() });

const due = {
  siteId: z.string(),
  reason: z.string().describe('Why it is due, in words; never a result'),
  dueOn: dateShown,
  daysLate: z.int().describe('Days since the due day; 0 today, negative for days still left'),
};

const WorkListEntryShown = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('referral'),
      referralId: z.string(),
      patientId: z.string(),
      familyName: z.string(),
      givenName: z.string(),
      diagnosis: z.string(),
      stage: z.string(),
      clinician: PersonShown.nullable().describe('Who last worked with the person'),
      ...due,
    }),
    z.strictObject({
      kind: z.literal('class'),
      sessionId: z.string(),
      mode: z.string(),
      isSupervised: z.boolean(),
      ...due,
    }),
  ])
  .meta({ id: 'WorkListEntry' });

const WorkListShown = z
  .strictObject({
    asAt: dateShown,
    openReferrals: z.int(),
    quietReferrals: z.int().describe('Open referrals for which nothing is due'),
    clinicians: z.array(PersonShown).describe('What the list can be narrowed to'),
    groups: z.array(
      z.strictObject({
        group: z.string(),
        title: z.string(),
        explanation: z.string(),
        count: z.int(),
        late: z.int().describe('Those due before today'),
        more: z.int().describe('How many follow the entries shown'),
        entries: z.array(WorkListEntryShown).describe('The oldest first'),
      }),
    ),
  })
  .meta({ id: 'WorkList' });

/** What a work list is narrowed to, as it stands in an address: no name, no identifier of a person. */
export const WorkListQuery = z.strictObject({
  siteId: idField.optional(),
  clinicianId: idField.optional().describe('Account of the person who last worked with them'),
  diagnosis: z.enum(DIAGNOSES).optional(),
  group: z.enum(WORK_GROUPS).optional(),
  limit: z.coerce
    .number('Give a whole number from 1 to 200.')
    .int()
    .min(1)
    .max(200)
    .default(50)
    .describe('Entries shown of each group, 1 to 200; the counts are of all'),
});

/** The work list. */
export function workListRoutes(app: App, context: Context): void {
  app.get(
    '/work-list',
    {
      schema: {
        operationId: 'readWorkList',
        summary: 'Read what is due and how late, grouped, in the order of the role',
        description:
          'Derived from the facts of open referrals. A referral may stand in several groups, once in each.',
        tags: ['work list'],
        querystring: WorkListQuery,
        response: { 200: WorkListShown, ...problemResponses(400, 401, 403) },
      },
    },
    async (request, reply) => {
      const { siteId = null, clinicianId = null, diagnosis = null, group = null, limit } = request.query;
      const filter = { siteId, clinicianId, diagnosis, group, limit };
      return reply.send(present(await readWorkList(context, teamMember(request), filter)));
    },
  );
}

function present(workList: WorkList): z.output<typeof WorkListShown> {
  const { asAt, openReferrals, quietReferrals, clinicians, groups } = workList;
  return {
    asAt,
    openReferrals,
    quietReferrals,
    clinicians: clinicians.map(({ id, name }) => ({ id, name })),
    groups: groups.map(({ group, title, explanation, count, late, more, entries }) => ({
      group,
      title,
      explanation,
      count,
      late,
      more,
      entries: entries.map(presentEntry),
    })),
  };
}

function presentEntry(entry: WorkListEntry): z.output<typeof WorkListEntryShown> {
  const { siteId, reason, dueOn, daysLate } = entry;
  const when = { siteId, reason, dueOn, daysLate };
  if (entry.kind === 'class') {
    const { id, mode, isSupervised } = entry;
    return { kind: 'class', sessionId: id, mode, isSupervised, ...when };
  }
  const { id, patientId, familyName, givenName, diagnosis, stage, clinician } = entry;
  return {
    kind: 'referral',
    referralId: id,
    patientId,
    familyName,
    givenName,
    diagnosis,
    stage,
    clinician: clinician === null ? null : { id: clinician.id, name: clinician.name },
    ...when,
  };
}
