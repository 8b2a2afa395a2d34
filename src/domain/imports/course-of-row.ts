import type { PlainDate } from '../calendar/plain-date.js';
import { mmrcToMrc } from '../measures/mrc-scales.js';
import type { PatientDetails } from '../patient/patient.js';
import type { Closure, ReferralDetails, Triage } from '../referral/referral.js';
import type { SessionCounts } from '../session/session-counts.js';
import type { Sourced } from './course-draft.js';
import type { RowValues } from './row-values.js';

/** A part of a row, or what is missing in it: column id and message. */
export type Built<Part> =
  | { readonly kind: 'built'; readonly built: Sourced<Part> }
  | { readonly kind: 'missing'; readonly faults: readonly MissingValue[] };

export interface MissingValue {
  readonly columnId: string;
  readonly message: string;
}

/** The person of a row. "Smith, Jan" and "Jan Smith" are both taken as a whole name only with the comma: the order is not guessed. */
export function personOf(row: RowValues): Built<PatientDetails> {
  const name = nameOf(row);
  const [bornOn, nhsNumber] = [row.date('person.bornOn'), row.text('person.nhsNumber')];
  const faults: MissingValue[] = [];
  if (name === null) {
    faults.push(
      missing(
        'person.familyName',
        'Give family name and given name; in one column as "family name, given name".',
      ),
    );
  }
  if (bornOn === null) faults.push(missing('person.bornOn', 'The date of birth is missing.'));
  if (name === null || bornOn === null) return { kind: 'missing', faults };
  const quintile = row.number('person.deprivationQuintile');
  const person: PatientDetails = {
    nhsNumber,
    nhsNumberMissingReason:
      nhsNumber === null ? (row.code('person.nhsNumberMissingReason') ?? 'not-yet-traced') : null,
    ...name,
    bornOn,
    sexAtBirth: row.code('person.sexAtBirth') ?? 'not-known',
    gender: row.code('person.gender') ?? 'not-known',
    ethnicCategory: row.code('person.ethnicCategory') ?? '99',
    deprivationQuintile: quintile,
    deprivationIndexYear: row.number('person.deprivationIndexYear'),
    smokingStatus: row.code('person.smokingStatus') ?? 'not-known',
    interpreterNeed: row.code('person.interpreterNeed') ?? 'not-known',
    livesAlone: row.code('person.livesAlone') ?? 'not-known',
    homeOxygen: row.code('person.homeOxygen') ?? 'not-known',
    gpPracticeCode: row.text('person.gpPracticeCode')?.toUpperCase() ?? null,
  };
  return { kind: 'built', built: { part: person, from: 'person' } };
}

function nameOf(row: RowValues): Pick<PatientDetails, 'familyName' | 'givenName'> | null {
  const [familyName, givenName] = [row.text('person.familyName'), row.text('person.givenName')];
  if (familyName !== null && givenName !== null) return { familyName, givenName };
  const [family = '', given = '', ...others] = (row.text('person.wholeName') ?? '')
    .split(',')
    .map((part) => part.trim());
  return family === '' || given === '' || others.length > 0 ? null : { familyName: family, givenName: given };
}

/**
 * The referral of a row.
 *
 * @param siteId the site where the row names none
 */
export function referralOf(row: RowValues, siteId: string | null): Built<ReferralDetails> {
  const faults: MissingValue[] = [];
  const site = row.text('referral.site') ?? siteId;
  const receivedOn = row.date('referral.receivedOn');
  if (site === null) faults.push(missing('referral.site', 'The site is missing.'));
  if (receivedOn === null)
    faults.push(missing('referral.receivedOn', 'The date on which the referral was received is missing.'));
  const mmrc = row.number('referral.mmrcGrade');
  if (mmrc !== null && mmrcToMrc(mmrc) === null)
    faults.push(missing('referral.mmrcGrade', 'An mMRC grade is 0 to 4.'));
  if (site === null || receivedOn === null || faults.length > 0) return { kind: 'missing', faults };
  const hospitalDischargedOn = row.date('referral.hospitalDischargedOn');
  const referral: ReferralDetails = {
    siteId: site,
    commissionerId: row.text('referral.commissioner'),
    receivedOn,
    source: row.code('referral.source') ?? 'not-known',
    diagnosis: row.code('referral.diagnosis') ?? 'not-known',
    otherConditions: row.text('referral.otherConditions'),
    pathway:
      row.code('referral.pathway') ?? (hospitalDischargedOn === null ? 'stable' : 'after-exacerbation'),
    hospitalDischargedOn,
    mrcGrade: row.number('referral.mrcGrade') ?? (mmrc === null ? null : mmrcToMrc(mmrc)),
    deliveryMode: row.code('referral.deliveryMode'),
    plannedStartOn: row.date('referral.plannedStartOn'),
    plannedSessions: row.number('referral.plannedSessions'),
    plannedWeeks: row.number('referral.plannedWeeks'),
    exercisePlanGivenOn: row.date('referral.exercisePlanGivenOn'),
  };
  return { kind: 'built', built: { part: referral, from: 'referral' } };
}

/** The triage of a row; null where it says nothing of one. A decision without its date is refused. */
export function triageOf(row: RowValues): Built<Triage> | null {
  const decision = row.code<Triage['decision']>('triage.decision');
  const decidedOn = row.date('triage.decidedOn');
  if (decision === null && decidedOn === null) return null;
  if (decidedOn === null)
    return {
      kind: 'missing',
      faults: [missing('triage.decidedOn', 'The date of the triage decision is missing.')],
    };
  const triage: Triage = { decision: decision ?? 'accepted', decidedOn, reason: row.text('triage.reason') };
  return { kind: 'built', built: { part: triage, from: 'triage' } };
}

/** The closure of a row; null where it says nothing of one. */
export function closureOf(row: RowValues): Built<Closure> | null {
  const [closedOn, reason] = [row.date('closure.closedOn'), row.code<Closure['reason']>('closure.reason')];
  if (closedOn === null && reason === null) return null;
  if (closedOn === null)
    return {
      kind: 'missing',
      faults: [missing('closure.closedOn', 'The date of closure is missing beside its reason.')],
    };
  if (reason === null)
    return {
      kind: 'missing',
      faults: [missing('closure.reason', 'The reason of closure is missing beside its date.')],
    };
  const closure: Closure = { closedOn, reason, note: row.text('closure.note') };
  return { kind: 'built', built: { part: closure, from: 'closure' } };
}

/**
 * The counts of sessions of a row; null where it says nothing of them.
 *
 * @param latest the day up to which they were counted where the row does not say: its closure or last assessment, else today
 */
export function sessionsOf(row: RowValues, latest: PlainDate): Built<SessionCounts> | null {
  const counted = ['attended', 'didNotAttend', 'cancelledByPatient', 'cancelledByService'] as const;
  const startedOn = row.date('sessions.startedOn');
  if (startedOn === null && counted.every((field) => row.number(`sessions.${field}`) === null)) return null;
  const counts: SessionCounts = {
    startedOn,
    countedOn: row.date('sessions.countedOn') ?? latest,
    attended: row.number('sessions.attended') ?? 0,
    didNotAttend: row.number('sessions.didNotAttend') ?? 0,
    cancelledByPatient: row.number('sessions.cancelledByPatient') ?? 0,
    cancelledByService: row.number('sessions.cancelledByService') ?? 0,
  };
  return { kind: 'built', built: { part: counts, from: 'sessions' } };
}

function missing(columnId: string, message: string): MissingValue {
  return { columnId, message };
}
