import { dimensionsOf } from '../../cohort/dimensions.js';
import { gathered } from '../code-lists.js';
import type { CodeList, TableDefinition } from '../table-definition.js';

/** Who was referred, and from where: one-way tables of the referrals received. */

export const SOURCE: TableDefinition = byDimension(
  'source',
  'Where referrals came from',
  'Who sent people to the service.',
  [
    gathered('fine', [
      ['general-practice', 'general practice', 'general-practice'],
      [
        'hospital',
        'hospital ward or early supported discharge',
        'hospital-ward',
        'early-supported-discharge',
      ],
      ['clinic', 'respiratory clinic or community team', 'respiratory-clinic', 'community-respiratory-team'],
      ['other', 'self-referral, other or not known', 'self-referral', 'other', 'not-known'],
    ]),
    gathered('coarse', [
      ['general-practice', 'general practice', 'general-practice'],
      [
        'elsewhere',
        'all other sources, or not known',
        'hospital-ward',
        'early-supported-discharge',
        'respiratory-clinic',
        'community-respiratory-team',
        'self-referral',
        'other',
        'not-known',
      ],
    ]),
  ],
);

export const DIAGNOSIS: TableDefinition = byDimension(
  'diagnosis',
  'Diagnosis',
  'The main lung disease for which people were referred.',
  [
    gathered('fine', [
      ['copd', 'COPD', 'copd'],
      ['airways', 'asthma or bronchiectasis', 'asthma', 'bronchiectasis'],
      [
        'interstitial',
        'interstitial lung disease',
        'idiopathic-pulmonary-fibrosis',
        'other-interstitial-lung-disease',
      ],
      [
        'other',
        'other, or not known',
        'pulmonary-hypertension',
        'lung-cancer',
        'other-respiratory',
        'not-known',
      ],
    ]),
    gathered('coarse', [
      ['copd', 'COPD', 'copd'],
      [
        'not-copd',
        'all other diagnoses, or not known',
        'asthma',
        'bronchiectasis',
        'idiopathic-pulmonary-fibrosis',
        'other-interstitial-lung-disease',
        'pulmonary-hypertension',
        'lung-cancer',
        'other-respiratory',
        'not-known',
      ],
    ]),
  ],
);

export const AGE: TableDefinition = byDimension('age', 'Age', 'Age in years on the day of the referral.', [
  gathered('fine', [
    ['under-60', 'under 60', 'under-50', '50-59'],
    ['60-69', '60 to 69', '60-69'],
    ['70-79', '70 to 79', '70-79'],
    ['80-and-over', '80 and over', '80-and-over'],
  ]),
  gathered('coarse', [
    ['under-70', 'under 70', 'under-50', '50-59', '60-69'],
    ['70-and-over', '70 and over', '70-79', '80-and-over'],
  ]),
]);

export const DEPRIVATION: TableDefinition = byDimension(
  'deprivation',
  'Deprivation of the home address',
  'All areas of the country are ranked and cut into fifths; the first two fifths are the most deprived.',
  [
    gathered('fine', [
      ['fifths-1-2', 'most deprived two fifths', 'fifth-1', 'fifth-2'],
      ['fifth-3', 'middle fifth', 'fifth-3'],
      ['fifths-4-5', 'least deprived two fifths', 'fifth-4', 'fifth-5'],
      ['not-known', 'not known', 'not-known'],
    ]),
    gathered('coarse', [
      ['fifths-1-2', 'most deprived two fifths', 'fifth-1', 'fifth-2'],
      ['elsewhere', 'all other fifths, or not known', 'fifth-3', 'fifth-4', 'fifth-5', 'not-known'],
    ]),
  ],
);

export const SEX: TableDefinition = {
  ...byDimension('sex', 'Sex at birth', 'As recorded at the referral.', [
    gathered('fine', [
      ['female', 'female', 'female'],
      ['not-female', 'male, or not recorded as either', 'male', 'indeterminate', 'not-known'],
    ]),
  ]),
  periods: 'year',
};

export const ETHNIC_GROUP: TableDefinition = {
  ...byDimension('ethnic-group', 'Ethnic group', 'As people described themselves.', [
    gathered('fine', [
      ['white', 'White', 'white'],
      ['other-groups', 'all other groups', 'mixed', 'asian', 'black', 'other'],
      ['not-stated', 'not stated or not known', 'not-stated', 'not-known'],
    ]),
  ]),
  periods: 'year',
};

/** A table of the referrals received by one of the dimensions of the report. */
function byDimension(
  id: string,
  title: string,
  explanation: string,
  codeLists: readonly [CodeList, ...CodeList[]],
): TableDefinition {
  const dimension = dimensionsOf([]).find((each) => each.id === id);
  if (dimension === undefined) throw new Error(`There is no dimension ${id}.`);
  return {
    id,
    title,
    explanation,
    universe: 'received',
    categories: dimension.groups,
    categoryOf: ({ facts }) => dimension.groupOf(facts),
    codeLists,
    shares: [],
    periods: 'every',
    needs: null,
  };
}
