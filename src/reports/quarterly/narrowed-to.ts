import type { NamedSite } from '../../domain/cohort/dimensions.js';
import type { Narrowing } from '../../domain/cohort/narrowing.js';
import { DIAGNOSIS_WORDS, MODE_WORDS, PATHWAY_WORDS } from '../../domain/referral/words.js';

/** One condition that a report was narrowed by, with its value and in words. */
export interface NarrowedTo {
  readonly field: 'siteId' | 'commissionerId' | 'diagnosis' | 'pathway' | 'mode' | 'firstReferralsOnly';
  readonly value: string;
  readonly words: string;
}

/**
 * What a report was narrowed to, in the order in which it is always printed.
 *
 * @param names of the team's sites and commissioners
 * @example narrowedTo({ diagnosis: 'copd' }, names) -> [{ field: 'diagnosis', value: 'copd', words: 'diagnosis: COPD' }]
 */
export function narrowedTo(
  narrowing: Narrowing,
  names: { readonly sites: readonly NamedSite[]; readonly commissioners: readonly NamedSite[] },
): readonly NarrowedTo[] {
  const { siteId, commissionerId, diagnosis, pathway, mode, firstReferralsOnly } = narrowing;
  const nameOf = (list: readonly NamedSite[], id: string): string =>
    list.find((each) => each.id === id)?.name ?? 'not known';
  return [
    ...(siteId === undefined
      ? []
      : [{ field: 'siteId' as const, value: siteId, words: `site: ${nameOf(names.sites, siteId)}` }]),
    ...(commissionerId === undefined
      ? []
      : [
          {
            field: 'commissionerId' as const,
            value: commissionerId,
            words: `commissioner: ${nameOf(names.commissioners, commissionerId)}`,
          },
        ]),
    ...(diagnosis === undefined
      ? []
      : [
          {
            field: 'diagnosis' as const,
            value: diagnosis,
            words: `diagnosis: ${DIAGNOSIS_WORDS[diagnosis]}`,
          },
        ]),
    ...(pathway === undefined
      ? []
      : [{ field: 'pathway' as const, value: pathway, words: `pathway: ${PATHWAY_WORDS[pathway]}` }]),
    ...(mode === undefined
      ? []
      : [{ field: 'mode' as const, value: mode, words: `mode of delivery: ${MODE_WORDS[mode]}` }]),
    ...(firstReferralsOnly === true
      ? [{ field: 'firstReferralsOnly' as const, value: 'true', words: 'first referrals only' }]
      : []),
  ];
}
