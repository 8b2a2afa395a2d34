import type { StandingCaution } from '../../domain/safety/standing-cautions.js';
import { PREDICTION_CAUTION } from '../../domain/prediction/predict.js';
import type { Caution, EndResult, MeasureOutcome } from './outcomes-model.js';

const FROM_FIGURES = {
  assessmentId: null,
  source: null,
  mustBeAcknowledged: false,
  isAcknowledged: false,
} as const;

/** The cautions of an assessment as outcomes show them. */
export function cautionsOfStanding(
  assessmentId: string,
  cautions: readonly StandingCaution[],
): readonly Caution[] {
  return cautions.map(({ id, measureId, text, citation, mustBeAcknowledged, acknowledgement }) => ({
    id,
    measureId,
    text,
    assessmentId,
    source: citation,
    mustBeAcknowledged,
    isAcknowledged: acknowledgement !== null,
  }));
}

/**
 * Everything that must be known before the figures are used, each said once per measure. What follows from one end alone,
 * such as a missing practice walk or a result at the ceiling, the cautions of its assessment say.
 */
export function cautionsOf(measures: readonly MeasureOutcome[]): readonly Caution[] {
  const general: readonly Caution[] = measures.some((measure) =>
    endsOf(measure).some((end) => end.predicted !== null),
  )
    ? [
        {
          ...FROM_FIGURES,
          id: 'predictions-are-of-healthy-people',
          measureId: null,
          text: PREDICTION_CAUTION,
        },
      ]
    : [];
  return [...general, ...measures.flatMap(cautionsOfMeasure)];
}

function cautionsOfMeasure(measure: MeasureOutcome): readonly Caution[] {
  const ends = endsOf(measure);
  const mark = measure.improvementThreshold?.mark ?? null;
  const populationNote = measure.improvementThreshold?.populationNote ?? null;
  const notPredicted = ends.flatMap((end) => end.predicted?.notPredictedReason ?? []);
  const found: readonly (readonly [boolean, string, string])[] = [
    [
      measure.differences.length > 0,
      'conditions-differ',
      `Not like for like: ${measure.differences.join('; ')}.`,
    ],
    [
      ends.some((end) => end.predicted?.beyondAgesStudied === true),
      'beyond-ages-studied',
      'The prediction is for an age beyond those studied.',
    ],
    [
      ends.some((end) => end.predicted?.isBelowLowerLimit === true),
      'below-lower-limit',
      'A result is below the lower limit of normal of the equation.',
    ],
    [notPredicted.length > 0, 'not-predicted', notPredicted[0] ?? ''],
    [mark !== null, 'threshold-source-not-read', `The MID is ${mark ?? ''}.`],
    [populationNote !== null, 'threshold-of-another-diagnosis', `${populationNote ?? ''}.`],
  ];
  return found.flatMap(([applies, id, text]) =>
    applies ? [{ ...FROM_FIGURES, id, measureId: measure.measureId, text }] : [],
  );
}

function endsOf(measure: MeasureOutcome): readonly EndResult[] {
  return [measure.baseline, measure.discharge].filter((end) => end !== null);
}
