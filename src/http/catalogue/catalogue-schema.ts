import { z } from 'zod';
import { evidenceMark } from '../../domain/evidence/citation.js';
import { toNumber } from '../../domain/exact/fraction.js';
import type { Fraction } from '../../domain/exact/fraction.js';
import { ruleOf } from '../../domain/indicators/indicator.js';
import type { Indicator } from '../../domain/indicators/indicator.js';
import { smallestChangeReaching } from '../../domain/measures/grid.js';
import type { Measure, Threshold } from '../../domain/measures/measure.js';
import type { AgesStudied, PredictionEquation } from '../../domain/prediction/prediction-equation.js';
import { pageSchema } from '../schema/paging.js';
import { CitationShown, presentCitation } from './citation-schema.js';
import { InstrumentShown, presentInstrumentOf } from './instrument-schema.js';

const interval = z.strictObject({ low: z.number(), high: z.number() }).nullable();

export const ThresholdShown = z
  .strictObject({
    id: z.string(),
    purpose: z.string(),
    value: z.number().nullable().describe('Size of change; null where the source gives a range only'),
    interval,
    amountsTo: z.string().describe('What the threshold means on the steps of the measure'),
    population: z.string(),
    diagnoses: z.array(z.string()),
    method: z.string(),
    n: z.int().nullable(),
    isDefault: z.boolean(),
    note: z.string().nullable(),
    source: CitationShown,
  })
  .meta({ id: 'Threshold' });

export const MeasureShown = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    shortName: z.string(),
    unit: z.string(),
    betterWhen: z.string(),
    min: z.number(),
    max: z.number(),
    step: z.number().nullable(),
    rangeSource: CitationShown,
    usualRange: interval.describe('Values outside must be confirmed'),
    thresholds: z.array(ThresholdShown),
    bands: z.array(
      z.strictObject({
        id: z.string(),
        isDefault: z.boolean(),
        source: CitationShown,
        bands: z.array(z.strictObject({ from: z.number(), to: z.number(), label: z.string() })),
      }),
    ),
    note: z.string().nullable(),
    instrument: InstrumentShown.describe('The test or questionnaire that yields it'),
  })
  .meta({ id: 'Measure' });

const AgesShown = z
  .strictObject({
    min: z.int().nullable(),
    max: z.int().nullable(),
    mark: z.string().nullable().describe('As of a source; null also where no limit is known'),
  })
  .meta({ id: 'AgesStudied' });

export const EquationShown = z
  .strictObject({
    id: z.string(),
    title: z.string(),
    measureId: z.string(),
    population: z.string(),
    n: z.string(),
    agesStudiedYears: AgesShown,
    agesStudiedWomenYears: AgesShown.nullable().describe('Where they differ from those of the whole sample'),
    needs: z.array(z.string()),
    formula: z.string(),
    lowerLimitRule: z.strictObject({ text: z.string(), source: CitationShown }).nullable(),
    source: CitationShown,
    cautions: z.array(z.string()),
  })
  .meta({ id: 'PredictionEquation' });

export const MeasurePage = pageSchema(MeasureShown, 'MeasurePage');
export const EquationPage = pageSchema(EquationShown, 'PredictionEquationPage');

/** A measure with its thresholds and bands. */
export function presentMeasure(measure: Measure): z.output<typeof MeasureShown> {
  return {
    id: measure.id,
    name: measure.name,
    shortName: measure.shortName,
    unit: measure.unit,
    betterWhen: measure.betterWhen,
    min: toNumber(measure.range.min),
    max: toNumber(measure.range.max),
    step: measure.range.step === null ? null : toNumber(measure.range.step),
    rangeSource: presentCitation(measure.range.citation),
    usualRange:
      measure.checkRange === null
        ? null
        : { low: toNumber(measure.checkRange.min), high: toNumber(measure.checkRange.max) },
    thresholds: measure.thresholds.map((threshold) => presentThreshold(measure, threshold)),
    bands: measure.bands.map((set) => ({
      id: set.id,
      isDefault: set.isDefault,
      source: presentCitation(set.citation),
      bands: set.bands.map(({ from, to, label }) => ({ from, to, label })),
    })),
    note: measure.note,
    instrument: presentInstrumentOf(measure),
  };
}

/** An equation with its population, source and cautions. */
export function presentEquation(equation: PredictionEquation): z.output<typeof EquationShown> {
  const { lowerLimitRule } = equation;
  return {
    id: equation.id,
    title: equation.title,
    measureId: equation.measureId,
    population: equation.population,
    n: equation.n,
    agesStudiedYears: presentAges(equation.agesStudiedYears),
    agesStudiedWomenYears:
      equation.agesStudiedWomenYears === undefined ? null : presentAges(equation.agesStudiedWomenYears),
    needs: [...equation.needs],
    formula: equation.formula,
    lowerLimitRule:
      lowerLimitRule === null
        ? null
        : { text: lowerLimitRule.text, source: presentCitation(lowerLimitRule.citation) },
    source: presentCitation(equation.citation),
    cautions: [...equation.cautions],
  };
}

function presentAges({ min, max, status }: AgesStudied): z.output<typeof AgesShown> {
  return { min, max, mark: status === null ? null : evidenceMark(status) };
}

function presentThreshold(measure: Measure, threshold: Threshold): z.output<typeof ThresholdShown> {
  const number = (value: Fraction | null): number | null => (value === null ? null : toNumber(value));
  return {
    id: threshold.id,
    purpose: threshold.purpose,
    value: number(threshold.value),
    interval:
      threshold.interval === null
        ? null
        : { low: toNumber(threshold.interval.low), high: toNumber(threshold.interval.high) },
    amountsTo: smallestChangeReaching(measure, threshold).words,
    population: threshold.population,
    diagnoses: [...threshold.diagnoses],
    method: threshold.method,
    n: threshold.n,
    isDefault: threshold.isDefault,
    note: threshold.note,
    source: presentCitation(threshold.citation),
  };
}

export const IndicatorShown = z
  .strictObject({
    id: z.string(),
    ruleId: z.string().describe('Id with version, printed beside every figure that it makes'),
    title: z.string(),
    cohort: z.string(),
    numerator: z.string(),
    denominator: z.string(),
    exclusions: z.string().nullable(),
    targetKey: z.string().describe('Key under which the settings of a team hold the target'),
    source: CitationShown,
  })
  .meta({ id: 'Indicator' });

export const IndicatorPage = pageSchema(IndicatorShown, 'IndicatorPage');

/** An indicator with its rule in words. */
export function presentIndicator(indicator: Indicator): z.output<typeof IndicatorShown> {
  const { id, title, cohort, numerator, denominator, exclusions, targetKey, source } = indicator;
  return {
    id,
    ruleId: ruleOf(indicator).ruleId,
    title,
    cohort,
    numerator,
    denominator,
    exclusions,
    targetKey,
    source: presentCitation(source),
  };
}
