import { UNIVERSES } from './table-definition.js';
import type { Universe, UniverseId } from './table-definition.js';

const BY_ID: Readonly<Record<UniverseId, Universe>> = {
  received: {
    id: 'received',
    cohort: 'referral',
    words: 'Referrals received in the period',
    includes: () => true,
  },
  assessed: {
    id: 'assessed',
    cohort: 'referral',
    words: 'Referrals received in the period that came to a first assessment',
    includes: (course) => course.assessedOn !== null,
  },
  started: {
    id: 'started',
    cohort: 'start',
    words: 'Referrals whose first supervised session was in the period',
    includes: () => true,
  },
  discharged: {
    id: 'discharged',
    cohort: 'discharge',
    words: 'Referrals that had started and were discharged in the period',
    includes: (course) => course.startedOn !== null,
  },
};

/** Every universe, in the order of the pathway. */
export const ALL_UNIVERSES: readonly Universe[] = UNIVERSES.map((id) => BY_ID[id]);

/** What a universe is. */
export function universeOf(id: UniverseId): Universe {
  return BY_ID[id];
}
