import type { Citation } from '../evidence/citation.js';

/**
 * Published meanings of desaturation; there is no single one.
 *
 * The first is the default of a team: it is judged by the lowest SpO2 alone, so that a walk whose SpO2 at the start was
 * not recorded is judged as well, and of the two meanings that can be so judged it is the more cautious.
 */
export const DESATURATION_DEFINITION_IDS = [
  'nadir-below-90',
  'nadir-88',
  'fall-4',
  'fall-4-and-below-90',
  'fall-4-and-88',
] as const;
export type DesaturationDefinitionId = (typeof DESATURATION_DEFINITION_IDS)[number];

/** One meaning of desaturation during a walk. */
export interface DesaturationDefinition {
  readonly id: DesaturationDefinitionId;
  readonly text: string;
  /** Points of SpO2 that it must fall from the start, at least; null where no fall is asked for. */
  readonly fallPoints: number | null;
  /** Where the lowest SpO2 must lie, as printed; null where no level is asked for. */
  readonly lowest: { readonly is: 'below' | 'at-or-below'; readonly percent: number } | null;
  /** What the record cannot show; null where the meaning is judged in full. */
  readonly notJudged: string | null;
  readonly citation: Citation;
}

/** Below this SpO2 in percent the recommendation is to stop a walk; 80 % itself does not. */
export const STOP_BELOW_SPO2_PERCENT = 80;

const COPD_DECLINE: Citation = {
  id: 'desaturation-pmid-24719141',
  text: 'Study of decline in COPD (PMID 24719141, abstract read)',
  doi: null,
  status: 'retrieved',
};

const ANDRIANOPOULOS_2014: Citation = {
  id: 'andrianopoulos-2014',
  text: 'Andrianopoulos V and others 2014, Respir Physiol Neurobiol, COPD, n = 402, of whom 39 % (abstract read)',
  doi: null,
  status: 'retrieved',
};

const BRONCHIECTASIS_FIELD_TESTS: Citation = {
  id: 'desaturation-bronchiectasis',
  text: 'Field walking tests in bronchiectasis, J Bras Pneumol, n = 72 (abstract read)',
  doi: null,
  status: 'retrieved',
};

const PEREZ_2019: Citation = {
  id: 'perez-2019',
  text: 'Perez T and others 2019, Int J COPD 14:1399, COPD, n = 440, of whom 35 % (abstract read)',
  doi: '10.2147/COPD.S188412',
  status: 'retrieved',
};

const KALINOV: Citation = {
  id: 'kalinov-desaturation',
  text: 'Kalinov R and others, Folia Medica, COPD, n = 40 (abstract read)',
  doi: null,
  status: 'retrieved',
};

export const DESATURATION_DEFINITIONS: Readonly<Record<DesaturationDefinitionId, DesaturationDefinition>> = {
  'nadir-below-90': {
    id: 'nadir-below-90',
    text: 'lowest SpO2 below 90 %',
    fallPoints: null,
    lowest: { is: 'below', percent: 90 },
    notJudged: null,
    citation: COPD_DECLINE,
  },
  'nadir-88': {
    id: 'nadir-88',
    text: 'lowest SpO2 88 % or less',
    fallPoints: null,
    lowest: { is: 'at-or-below', percent: 88 },
    notJudged: null,
    citation: ANDRIANOPOULOS_2014,
  },
  'fall-4': {
    id: 'fall-4',
    text: 'fall of SpO2 by 4 points or more',
    fallPoints: 4,
    lowest: null,
    notJudged: null,
    citation: BRONCHIECTASIS_FIELD_TESTS,
  },
  'fall-4-and-below-90': {
    id: 'fall-4-and-below-90',
    text: 'fall of SpO2 by 4 points or more, to below 90 %',
    fallPoints: 4,
    lowest: { is: 'below', percent: 90 },
    notJudged: null,
    citation: PEREZ_2019,
  },
  'fall-4-and-88': {
    id: 'fall-4-and-88',
    text: 'fall of SpO2 by 4 points or more, to 88 % or less, held for 3 minutes',
    fallPoints: 4,
    lowest: { is: 'at-or-below', percent: 88 },
    notJudged: 'How long SpO2 stayed low is not recorded: the 3 minutes cannot be judged.',
    citation: KALINOV,
  },
};

/** SpO2 in whole percent at the start of a walk and at its lowest; null is not recorded. */
export interface WalkSaturation {
  readonly startSpo2Percent: number | null;
  readonly lowestSpo2Percent: number | null;
}

/** Whether a walk desaturated by one meaning, which is named with the answer. */
export interface DesaturationFlag {
  readonly definitionId: DesaturationDefinitionId;
  /** `possibly-desaturated`: all that the record can show is there, and the meaning asks for more. */
  readonly kind: 'desaturated' | 'possibly-desaturated' | 'not-desaturated' | 'not-known';
  /** Whether SpO2 fell to where a walk is to be stopped; null when its lowest value is not recorded. */
  readonly isBelowStopRule: boolean | null;
}

/**
 * Whether SpO2 fell during a walk, by one of the published meanings, and whether it fell below the stop rule.
 *
 * @param saturation as recorded; a missing value leaves the answer open unless the other one decides it
 * @source The citation of the definition; stop rule: Afzal S 2018, doi 10.1016/j.apmr.2018.07.426.
 * @example lowest 89 % by nadir-below-90 -> desaturated; lowest 90 % -> not-desaturated
 */
export function desaturationOf(
  saturation: WalkSaturation,
  definitionId: DesaturationDefinitionId,
): DesaturationFlag {
  const { startSpo2Percent: start, lowestSpo2Percent: lowest } = saturation;
  const definition = DESATURATION_DEFINITIONS[definitionId];
  const parts = [isFallEnough(start, lowest, definition), isLowEnough(lowest, definition)];
  return {
    definitionId,
    kind: kindOf(parts, definition),
    isBelowStopRule: lowest === null ? null : lowest < STOP_BELOW_SPO2_PERCENT,
  };
}

function kindOf(
  parts: readonly (boolean | null)[],
  definition: DesaturationDefinition,
): DesaturationFlag['kind'] {
  if (parts.includes(false)) return 'not-desaturated';
  if (parts.includes(null)) return 'not-known';
  return definition.notJudged === null ? 'desaturated' : 'possibly-desaturated';
}

function isFallEnough(
  start: number | null,
  lowest: number | null,
  { fallPoints }: DesaturationDefinition,
): boolean | null {
  if (fallPoints === null) return true;
  return start === null || lowest === null ? null : start - lowest >= fallPoints;
}

function isLowEnough(lowest: number | null, { lowest: level }: DesaturationDefinition): boolean | null {
  if (level === null) return true;
  if (lowest === null) return null;
  return level.is === 'below' ? lowest < level.percent : lowest <= level.percent;
}
