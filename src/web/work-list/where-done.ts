import type { TeamMember } from '../../usecases/context.js';
import type { ReferralEntry, WorkListEntry } from '../../usecases/work-list/work-list-model.js';

/** Where the work of an entry is done, in a verb and an address. */
export interface WhereDone {
  readonly verb: string;
  readonly address: string;
}

/**
 * The page on which what is due is done, for a role: an administrator is led to what they may do about it.
 *
 * @example a referral to triage, for a clinician -> Triage, /referrals/{id}/triage
 */
export function whereDone(entry: WorkListEntry, role: TeamMember['role']): WhereDone {
  if (entry.kind === 'class') return { verb: 'Register', address: `/classes/${entry.id}` };
  return role === 'admin' ? byAdmin(entry) : byClinician(entry);
}

function byAdmin(entry: ReferralEntry): WhereDone {
  switch (entry.group) {
    case 'booking':
    case 'assessments':
    case 'discharge-assessments':
      return offers(entry);
    case 'starts':
      return start(entry);
    case 'waits':
      return entry.stage === 'awaiting-triage' ? referral(entry) : onTheWay(entry);
    case 'closure':
      return close(entry);
    case 'triage':
    case 'pairs-at-risk':
    case 'duplicates':
      return referral(entry);
  }
}

function byClinician(entry: ReferralEntry): WhereDone {
  switch (entry.group) {
    case 'triage':
      return triage(entry);
    case 'booking':
      return offers(entry);
    case 'assessments':
      return assess(entry, 'baseline');
    case 'discharge-assessments':
      return assess(entry, 'discharge');
    case 'pairs-at-risk':
      return assess(entry, entry.stage === 'in-programme' ? 'baseline' : 'discharge');
    case 'starts':
      return start(entry);
    case 'waits':
      return entry.stage === 'awaiting-triage' ? triage(entry) : onTheWay(entry);
    case 'closure':
      return close(entry);
    case 'duplicates':
      return referral(entry);
  }
}

/** Somebody who was accepted and waits is moved on by the next step of their stage. */
function onTheWay(entry: ReferralEntry): WhereDone {
  return entry.stage === 'awaiting-start' ? start(entry) : offers(entry);
}

function triage({ id }: ReferralEntry): WhereDone {
  return { verb: 'Triage', address: `/referrals/${id}/triage` };
}

function offers({ id }: ReferralEntry): WhereDone {
  return { verb: 'Book', address: `/referrals/${id}/offers` };
}

/** A start that is planned is not planned again: it is changed before its day, and registered from that day on. */
function start(entry: ReferralEntry): WhereDone {
  const { id, siteId, startStep } = entry;
  const plan = `/referrals/${id}/planned-start`;
  switch (startStep?.kind) {
    case 'register':
      return { verb: 'Register', address: `/classes?week=${startStep.plannedOn}&site=${siteId}` };
    case 'change-plan':
      return { verb: 'Change start', address: plan };
    case 'offer-again':
      return { verb: 'Offer again', address: `/referrals/${id}/offers` };
    case 'follow-up':
      return { verb: 'Follow up', address: `/referrals/${id}/offers` };
    case 'plan':
    case undefined:
      return { verb: 'Plan start', address: plan };
  }
}

function assess({ id }: ReferralEntry, timepoint: 'baseline' | 'discharge'): WhereDone {
  return { verb: 'Assess', address: `/referrals/${id}/assessments/${timepoint}` };
}

function close({ id }: ReferralEntry): WhereDone {
  return { verb: 'Close', address: `/referrals/${id}/closing` };
}

function referral({ id }: ReferralEntry): WhereDone {
  return { verb: 'Open', address: `/referrals/${id}` };
}
