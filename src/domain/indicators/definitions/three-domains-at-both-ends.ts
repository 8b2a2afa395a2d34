import type { Indicator } from '../indicator.js';
import { counts, countsNot, leftOut } from '../judge.js';
import { OUTCOME_DOMAINS } from '../outcome-domains.js';
import { BTS_GUIDELINE_2013 } from '../sources.js';

/** Walking, breathlessness and health status all measured at both ends, of those discharged who had started. */
export const THREE_DOMAINS_AT_BOTH_ENDS: Indicator = {
  id: 'three-domains-at-both-ends',
  version: 2,
  title: 'Walk test, breathlessness and health status at both ends',
  cohort: 'discharge',
  targetKey: 'three-domains-at-both-ends',
  numerator:
    'A pair, like for like or not, of at least one walk test, one breathlessness and one health status measure',
  denominator: 'Discharged in the period and had started, whatever the reason for closure',
  exclusions: 'Did not start',
  source: BTS_GUIDELINE_2013,
  judge: (course, { changesOf }) => {
    if (course.startedOn === null) return leftOut('did-not-start', 'Did not start');
    const changes = changesOf(course);
    const missing = OUTCOME_DOMAINS.filter(
      (domain) => !domain.measureIds.some((id) => changes.get(id)?.comparison.kind === 'pair'),
    );
    if (missing.length === 0) return counts('All three measured at both ends');
    return countsNot(`No pair: ${missing.map((domain) => domain.name).join(', ')}`);
  },
};
