import { ageInYears } from '../calendar/plain-date.js';
import type { EthnicCategory, YesNoNotKnown } from '../patient/patient.js';
import {
  DELIVERY_MODES,
  DIAGNOSES,
  PATHWAYS,
  REFERRAL_SOURCES,
  SEXES_AT_BIRTH,
} from '../referral/closed-sets.js';
import { DIAGNOSIS_WORDS, MODE_WORDS, PATHWAY_WORDS, SEX_WORDS, SOURCE_WORDS } from '../referral/words.js';
import type { ReferralFacts } from './referral-facts.js';

/** One way of sorting referrals into groups, each into one and only one. */
export interface Dimension {
  /** In the id of a figure: lower case letters and hyphens. */
  readonly id: string;
  readonly title: string;
  /** In the order in which they are always shown; never by their figures. */
  readonly groups: readonly Group[];
  readonly groupOf: (facts: ReferralFacts) => string;
}

export interface Group {
  readonly id: string;
  readonly words: string;
}

/** A site of the team. */
export interface NamedSite {
  readonly id: string;
  readonly name: string;
}

const NOT_KNOWN: Group = { id: 'not-known', words: 'not known' };

/**
 * Five groups of the sixteen categories, those who were asked and did not say, and those who were not asked.
 *
 * @source NHS Data Dictionary, ETHNIC CATEGORY: headings of the 2001 census, under which R (Chinese) stands with other groups.
 */
const ETHNIC_GROUPS: readonly (Group & { readonly categories: readonly EthnicCategory[] })[] = [
  { id: 'white', words: 'White', categories: ['A', 'B', 'C'] },
  { id: 'mixed', words: 'Mixed', categories: ['D', 'E', 'F', 'G'] },
  { id: 'asian', words: 'Asian or Asian British', categories: ['H', 'J', 'K', 'L'] },
  { id: 'black', words: 'Black or Black British', categories: ['M', 'N', 'P'] },
  { id: 'other', words: 'Other ethnic groups', categories: ['R', 'S'] },
  { id: 'not-stated', words: 'not stated', categories: ['Z'] },
  { id: 'not-known', words: 'not known', categories: ['99'] },
];
const groupOfCategory = new Map(
  ETHNIC_GROUPS.flatMap(({ id, categories }) => categories.map((category) => [category, id] as const)),
);

/** Completed years on the day of receipt, by the first year of each band. */
const AGE_BANDS: readonly (Group & { readonly from: number })[] = [
  { id: 'under-50', words: 'under 50', from: 0 },
  { id: '50-59', words: '50 to 59', from: 50 },
  { id: '60-69', words: '60 to 69', from: 60 },
  { id: '70-79', words: '70 to 79', from: 70 },
  { id: '80-and-over', words: '80 and over', from: 80 },
];

const FIFTHS: readonly Group[] = [
  { id: 'fifth-1', words: '1, most deprived fifth' },
  { id: 'fifth-2', words: '2' },
  { id: 'fifth-3', words: '3' },
  { id: 'fifth-4', words: '4' },
  { id: 'fifth-5', words: '5, least deprived fifth' },
  NOT_KNOWN,
];

const YES_NO: readonly (Group & { readonly id: YesNoNotKnown })[] = [
  { id: 'yes', words: 'yes' },
  { id: 'no', words: 'no' },
  { id: 'not-known', words: 'not known' },
];

const OF_EVERY_TEAM: readonly Dimension[] = [
  {
    id: 'sex',
    title: 'Sex at birth',
    groups: groupsOf(SEXES_AT_BIRTH, SEX_WORDS),
    groupOf: ({ patient }) => patient.sexAtBirth,
  },
  {
    id: 'age',
    title: 'Age at receipt',
    groups: AGE_BANDS,
    groupOf: ({ patient, receivedOn }) => ageBandOf(ageInYears(patient.bornOn, receivedOn)),
  },
  {
    id: 'ethnic-group',
    title: 'Ethnic group',
    groups: ETHNIC_GROUPS,
    groupOf: ({ patient }) => ethnicGroupOf(patient.ethnicCategory),
  },
  {
    id: 'deprivation',
    title: 'Deprivation fifth of the home address',
    groups: FIFTHS,
    groupOf: ({ patient: { deprivationQuintile } }) =>
      deprivationQuintile === null ? NOT_KNOWN.id : `fifth-${deprivationQuintile}`,
  },
  {
    id: 'diagnosis',
    title: 'Diagnosis',
    groups: groupsOf(DIAGNOSES, DIAGNOSIS_WORDS),
    groupOf: ({ diagnosis }) => diagnosis,
  },
  {
    id: 'pathway',
    title: 'Pathway',
    groups: groupsOf(PATHWAYS, PATHWAY_WORDS),
    groupOf: ({ pathway }) => pathway,
  },
  {
    id: 'source',
    title: 'Referral source',
    groups: groupsOf(REFERRAL_SOURCES, SOURCE_WORDS),
    groupOf: ({ source }) => source,
  },
  {
    id: 'mode',
    title: 'Mode of delivery',
    groups: [...groupsOf(DELIVERY_MODES, MODE_WORDS), { id: 'not-decided', words: 'not decided' }],
    groupOf: ({ deliveryMode }) => deliveryMode ?? 'not-decided',
  },
  {
    id: 'interpreter',
    title: 'Needs an interpreter',
    groups: YES_NO,
    groupOf: ({ patient }) => patient.interpreterNeed,
  },
  {
    id: 'home-oxygen',
    title: 'Oxygen at home',
    groups: YES_NO,
    groupOf: ({ patient }) => patient.homeOxygen,
  },
];

/**
 * Every dimension by which figures are broken down, with the team's own sites.
 *
 * @param sites every site that a referral of the team may name
 */
export function dimensionsOf(sites: readonly NamedSite[]): readonly Dimension[] {
  const bySite: Dimension = {
    id: 'site',
    title: 'Site',
    groups: sites.map(({ id, name }) => ({ id, words: name })),
    groupOf: ({ siteId }) => siteId,
  };
  return [...OF_EVERY_TEAM, bySite];
}

/** Ids of the bands of ages. */
export const AGE_BAND_IDS: readonly string[] = AGE_BANDS.map(({ id }) => id);

/** The band of an age in completed years. @example ageBandOf(67) -> '60-69' */
export function ageBandOf(years: number): string {
  return AGE_BANDS.findLast(({ from }) => years >= from)?.id ?? NOT_KNOWN.id;
}

/** Ids of the groups of ethnic categories. */
export const ETHNIC_GROUP_IDS: readonly string[] = ETHNIC_GROUPS.map(({ id }) => id);

/** The group of an ethnic category. @example ethnicGroupOf('H') -> 'asian' */
export function ethnicGroupOf(category: EthnicCategory): string {
  return groupOfCategory.get(category) ?? NOT_KNOWN.id;
}

function groupsOf<Member extends string>(
  members: readonly Member[],
  words: Readonly<Record<Member, string>>,
): readonly Group[] {
  return members.map((id) => ({ id, words: words[id] }));
}
