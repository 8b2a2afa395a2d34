import { addDays, daysBetween } from '../../domain/calendar/plain-date.js';
import { courseOf } from '../../domain/pathway/course.js';
import { stageOfCourse } from '../../domain/pathway/stage.js';
import type { Diagnosis } from '../../domain/referral/closed-sets.js';
import { classDue } from '../../domain/work-list/class-due.js';
import { groupWork } from '../../domain/work-list/group-work.js';
import { GROUP_ORDER, GROUPS } from '../../domain/work-list/groups.js';
import { REGISTER_DAYS_BACK } from '../../domain/work-list/look-ahead.js';
import { startStepOf } from '../../domain/work-list/rules/start-due.js';
import { workOf } from '../../domain/work-list/work-of.js';
import type { WorkGroupId } from '../../domain/work-list/work-list.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { currentSettings } from '../../storage/settings/settings.js';
import { lastClinicians } from '../../storage/work-list/last-clinicians.js';
import type { NamedAccount } from '../../storage/work-list/last-clinicians.js';
import { openReferrals, patientsWithLikeRecord } from '../../storage/work-list/open-referrals.js';
import { unregisteredSessions } from '../../storage/work-list/unregistered-sessions.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import type { ClassEntry, ReferralEntry, WorkList, WorkListEntry } from './work-list-model.js';

/** What a work list is narrowed to; null for no narrowing. */
export interface WorkListRequest {
  readonly siteId: string | null;
  readonly clinicianId: string | null;
  readonly diagnosis: Diagnosis | null;
  /** One group only, so that the rest of a long one can be seen. */
  readonly group: WorkGroupId | null;
  /** Entries shown of each group, 1 to 200; the counts are of all. */
  readonly limit: number;
  /** Set where it leaves the service as a file. */
  readonly form?: 'csv';
}

/** What is due in the member's team today, in the order of the member's role. Only open referrals are read. */
export async function readWorkList(
  context: Context,
  actor: TeamMember,
  request: WorkListRequest,
): Promise<WorkList> {
  const asAt = context.clock.today();
  const referrals = await referralWork(context, actor, request);
  const classes = await classWork(context, actor, request);
  const order = GROUP_ORDER[actor.role].filter((group) => request.group === null || group === request.group);
  const groups = groupWork<WorkListEntry>([...referrals.entries, ...classes], order).map(
    ({ group, entries, count, late }) => {
      const shown = entries.slice(0, request.limit);
      return { group, ...GROUPS[group], count, late, entries: shown, more: count - shown.length };
    },
  );
  const { siteId, clinicianId, diagnosis, form } = request;
  await recordRead(context, actor, {
    action: 'work-list-read',
    details: {
      siteId,
      clinicianId,
      diagnosis,
      form,
      referralIds: [...new Set(groups.flatMap(referralIdsOf))],
    },
  });
  return {
    asAt,
    openReferrals: referrals.open,
    quietReferrals: referrals.quiet,
    groups,
    clinicians: referrals.clinicians,
  };
}

function referralIdsOf(group: { readonly entries: readonly WorkListEntry[] }): readonly string[] {
  return group.entries.flatMap((entry) => (entry.kind === 'referral' ? [entry.id] : []));
}

async function referralWork(
  context: Context,
  actor: TeamMember,
  request: WorkListRequest,
): Promise<{
  readonly entries: readonly ReferralEntry[];
  readonly open: number;
  readonly quiet: number;
  readonly clinicians: readonly NamedAccount[];
}> {
  const db = context.reader;
  const { settings } = await currentSettings(db, actor.teamId);
  const open = await openReferrals(db, actor.teamId);
  // Of all, so that what can be chosen does not depend on what was chosen.
  const clinicians = await lastClinicians(
    db,
    open.map(({ id }) => id),
  );
  const { siteId, clinicianId, diagnosis } = request;
  const wanted = open.filter(
    (referral) =>
      (siteId === null || referral.siteId === siteId) &&
      (diagnosis === null || referral.diagnosis === diagnosis) &&
      (clinicianId === null || clinicians.get(referral.id)?.id === clinicianId),
  );
  const people = new Map(wanted.map((referral) => [referral.id, referral]));
  const alike = await patientsWithLikeRecord(
    db,
    actor.teamId,
    wanted.map(({ patientId }) => patientId),
  );
  const facts = await loadReferralFacts(db, actor.teamId, [...people.keys()], settings);
  const entries: ReferralEntry[] = [];
  let quiet = 0;
  for (const each of facts) {
    const course = courseOf(each, context.clock.today());
    const person = people.get(each.referralId);
    if (course === null || person === undefined) continue;
    const stage = stageOfCourse(course);
    const work = workOf({ course, stage, settings, mayBeDuplicate: alike.has(each.patientId) });
    if (work.kind === 'quiet') {
      quiet += 1;
      continue;
    }
    const clinician = clinicians.get(each.referralId) ?? null;
    const startStep = stage === 'awaiting-start' ? startStepOf(course) : null;
    const entry = { kind: 'referral', ...person, stage, startStep, clinician } as const;
    for (const due of work.dues) entries.push({ ...entry, ...due });
  }
  return { entries, open: facts.length, quiet, clinicians: byName(clinicians.values()) };
}

/** Classes belong to a site and to nobody's diagnosis: a list narrowed to either of the other two has none. */
async function classWork(
  context: Context,
  actor: TeamMember,
  request: WorkListRequest,
): Promise<readonly ClassEntry[]> {
  if (request.clinicianId !== null || request.diagnosis !== null) return [];
  const today = context.clock.today();
  const sessions = await unregisteredSessions(context.reader, actor.teamId, {
    from: addDays(today, -REGISTER_DAYS_BACK),
    to: today,
    siteId: request.siteId,
  });
  return sessions.flatMap(({ id, siteId, mode, isSupervised, heldOn }) => {
    const due = classDue(heldOn, today);
    const entry = { kind: 'class', group: 'classes', id, siteId, mode, isSupervised } as const;
    return due === null ? [] : [{ ...entry, ...due, daysLate: daysBetween(due.dueOn, today) }];
  });
}

function byName(accounts: Iterable<NamedAccount>): readonly NamedAccount[] {
  const known = new Map([...accounts].map((account) => [account.id, account]));
  return [...known.values()].sort((a, b) =>
    a.name < b.name ? -1 : a.name > b.name ? 1 : a.id < b.id ? -1 : 1,
  );
}
