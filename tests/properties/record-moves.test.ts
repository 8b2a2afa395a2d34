import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays, plainDate } from '../../src/domain/calendar/plain-date.js';
import { CLOSURE_REASONS, DIAGNOSES, REFERRAL_SOURCES } from '../../src/domain/referral/closed-sets.js';
import { ETHNIC_CATEGORIES, GENDERS } from '../../src/domain/patient/patient.js';
import { createAccount, createTeam } from '../../src/usecases/accounts/provision.js';
import { recordAssessment } from '../../src/usecases/assessments/record-assessment.js';
import type { TeamMember } from '../../src/usecases/context.js';
import { bringRecordIn } from '../../src/usecases/exports/bring-record-in.js';
import { exportRecordByName } from '../../src/usecases/exports/export-record.js';
import { correctPatient } from '../../src/usecases/patients/correct-patient.js';
import { registerPatient } from '../../src/usecases/patients/register-patient.js';
import { closeReferral, triageReferral } from '../../src/usecases/referrals/change-referral.js';
import { registerReferral } from '../../src/usecases/referrals/register-referral.js';
import { holdSession, recordAttendances } from '../../src/usecases/sessions/keep-register.js';
import { anEntry, aQuestionnaire, aWalk } from '../support/assessment-entries.js';
import { emptyStore } from '../support/moved-record.js';
import type { EmptyStore } from '../support/moved-record.js';
import { valueOf } from '../support/people.js';

const RECEIVED = plainDate('2026-04-02');

/** What people type: formulas, quotation marks, lines, apostrophes, other scripts, numbers that must stay text. */
const typed = fc.oneof(
  fc.constantFrom(
    '=1+1',
    "'=1+1",
    '-3',
    '-',
    '+44',
    '@dune',
    '"',
    ',',
    '',
    ' ',
    "'",
    '\t=x',
    'a\r\nb',
    '\n',
    '0',
    '9.44E+09',
    'ß ć 山',
  ),
  fc.string({ maxLength: 12 }),
  fc.string({ unit: 'grapheme', maxLength: 6 }),
);
const note = fc.option(typed);

const person = fc.record({
  familyName: typed.filter((text) => text.trim() !== ''),
  givenName: typed,
  born: fc.integer({ min: 0, max: 15_000 }),
  gender: fc.constantFrom(...GENDERS),
  ethnicCategory: fc.constantFrom(...ETHNIC_CATEGORIES),
  corrected: fc.option(typed),
  source: fc.constantFrom(...REFERRAL_SOURCES),
  diagnosis: fc.constantFrom(...DIAGNOSES),
  otherConditions: note,
  triageReason: note,
  assessment: fc.option(
    fc.record({
      distanceM: fc.integer({ min: 0, max: 102 }).map((shuttles) => shuttles * 10),
      items: fc.array(fc.option(fc.integer({ min: 0, max: 5 })), { minLength: 8, maxLength: 8 }),
      notes: note,
      safetyNote: note,
    }),
  ),
  attended: fc.array(fc.boolean(), { maxLength: 3 }),
  closed: fc.option(fc.record({ reason: fc.constantFrom(...CLOSURE_REASONS), note })),
});
type RandomPerson = typeof person extends fc.Arbitrary<infer Value> ? Value : never;

let [former, fresh]: EmptyStore[] = [];
let teams = 0;
beforeAll(async () => {
  [former, fresh] = [await emptyStore(), await emptyStore()];
});
afterAll(async () => {
  await former?.remove();
  await fresh?.remove();
});

describe('the record of a team', () => {
  it('is the same bytes again once it was taken out, brought in and taken out, whatever was entered', async () => {
    if (former === undefined || fresh === undefined) throw new Error('There are no stores.');
    const [one, other] = [former.record, fresh.record];
    await fc.assert(
      fc.asyncProperty(fc.array(person, { minLength: 1, maxLength: 3 }), async (people) => {
        teams += 1;
        const name = `Team ${teams}`;
        const { teamId, siteIds } = await createTeam(one.context, {
          name,
          kind: 'demo',
          siteNames: ['Dune Hall'],
        });
        const { accountId } = await createAccount(one.context, {
          displayName: 'Test lead',
          belonging: { role: 'lead', teamId },
          tokenName: 'tests',
          expiresAt: '2100-01-01T00:00:00.000Z',
        });
        const actor: TeamMember = { accountId, role: 'lead', teamId };
        for (const each of people) await enter(one, actor, siteIds['Dune Hall'] ?? '', each);
        const file = await takenOut(one, name);
        // In either form, so that what was typed goes through both.
        const moved = teams % 2 === 0 ? file : await takenOut(one, name, 'json');
        expect(await bringRecordIn(other.context, moved)).toMatchObject({ kind: 'done' });
        expect(Buffer.from(await takenOut(other, name)).equals(Buffer.from(file))).toBe(true);
      }),
      { numRuns: 12 },
    );
  });
});

async function takenOut(
  { context }: EmptyStore['record'],
  team: string,
  form: 'zip' | 'json' = 'zip',
): Promise<Uint8Array> {
  const file = await exportRecordByName(context, team, form);
  if (typeof file === 'string') throw new Error(file);
  return file.content;
}

async function enter(
  { context }: EmptyStore['record'],
  actor: TeamMember,
  siteId: string,
  each: RandomPerson,
): Promise<void> {
  const details = {
    nhsNumber: null,
    nhsNumberMissingReason: 'not-yet-traced',
    familyName: each.familyName,
    givenName: each.givenName,
    bornOn: addDays(plainDate('1930-01-01'), each.born),
    sexAtBirth: 'female',
    gender: each.gender,
    ethnicCategory: each.ethnicCategory,
    deprivationQuintile: null,
    deprivationIndexYear: null,
    smokingStatus: 'former',
    interpreterNeed: 'no',
    livesAlone: 'yes',
    homeOxygen: 'not-known',
    gpPracticeCode: null,
  } as const;
  const patient = valueOf(await registerPatient(context, actor, details));
  if (each.corrected !== null) {
    const change = { changes: { givenName: each.corrected }, reason: each.corrected, basedOn: [1] };
    valueOf(await correctPatient(context, actor, patient.id, change));
  }
  const { source, diagnosis, otherConditions } = each;
  const referral = valueOf(
    await registerReferral(context, actor, patient.id, {
      siteId,
      commissionerId: null,
      receivedOn: RECEIVED,
      source,
      diagnosis,
      otherConditions,
      pathway: 'stable',
      hospitalDischargedOn: null,
      mrcGrade: null,
      deliveryMode: null,
      plannedStartOn: null,
      plannedSessions: null,
      plannedWeeks: null,
      exercisePlanGivenOn: null,
    }),
  );
  const triage = { decision: 'accepted', decidedOn: RECEIVED, reason: each.triageReason } as const;
  valueOf(await triageReferral(context, actor, referral.id, { ...triage, mrcGrade: 3, basedOn: [1] }));
  if (each.assessment !== null) {
    const { distanceM, items, notes, safetyNote } = each.assessment;
    const entry = anEntry({
      siteId,
      notes,
      safetyNote,
      walkTests: [aWalk({ distanceM, courseLengthM: 10 })],
      questionnaires: [aQuestionnaire({ items })],
      confirmed: ['/walkTests/0/distanceM'],
    });
    // Some questionnaires have too few items to be scored; that is as well refused as entered.
    await recordAssessment(context, actor, referral.id, entry);
  }
  for (const [week, isAttended] of each.attended.entries()) {
    const heldOn = addDays(RECEIVED, 20 + 7 * week);
    const session = { siteId, heldOn, mode: 'centre', isSupervised: true } as const;
    const held = valueOf(await holdSession(context, actor, session));
    const outcome = isAttended ? 'attended' : 'did-not-attend';
    const change = { attendances: [{ referralId: referral.id, outcome } as const], basedOn: [1] };
    valueOf(await recordAttendances(context, actor, held.id, change));
  }
  if (each.closed !== null) {
    const closure = {
      closedOn: addDays(RECEIVED, 90),
      ...each.closed,
      exercisePlanGivenOn: null,
      basedOn: [2],
    };
    valueOf(await closeReferral(context, actor, referral.id, closure));
  }
}
