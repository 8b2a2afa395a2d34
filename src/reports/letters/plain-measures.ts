/**
 * How a measure is told to the person it was measured of.
 *
 * - `result`: what was done is told with its numbers
 * - `feeling`: an answer on a questionnaire is told as better, about the same or worse, without a number
 */
export type PlainMeasure =
  | {
      readonly kind: 'result';
      /** Sentence about the first result. @example first('320') -> 'You walked 320 metres in six minutes' */
      readonly first: (value: string) => string;
      readonly then: (value: string) => string;
      /** The size of a change that is for the better. */
      readonly more: (size: string) => string;
      /** The size of one that is not. */
      readonly less: (size: string) => string;
    }
  | { readonly kind: 'feeling'; readonly about: string };

const walk = (how: string): PlainMeasure => ({
  kind: 'result',
  first: (value) => `At the start you walked ${value} metres ${how}.`,
  then: (value) => `At the end you walked ${value} metres.`,
  more: (size) => `That is ${size} metres more.`,
  less: (size) => `That is ${size} metres less.`,
});

const stands = (how: string): PlainMeasure => ({
  kind: 'result',
  first: (value) => `At the start you stood up from a chair ${value} times ${how}.`,
  then: (value) => `At the end it was ${value} times.`,
  more: (size) => `That is ${size} more.`,
  less: (size) => `That is ${size} less.`,
});

/** Measures that are told in plain words, by id. Any other stays out of the letter, and the clinician is told so. */
export const PLAIN_MEASURES: ReadonlyMap<string, PlainMeasure> = new Map<string, PlainMeasure>([
  ['six-minute-walk-distance', walk('in six minutes')],
  ['two-minute-walk-distance', walk('in two minutes')],
  ['incremental-shuttle-walk-distance', walk('in the walk that gets faster')],
  ['incremental-shuttle-walk-15-level-distance', walk('in the walk that gets faster')],
  [
    'endurance-shuttle-walk-time',
    {
      kind: 'result',
      first: (value) => `At the start you kept up a set pace for ${value} seconds.`,
      then: (value) => `At the end it was ${value} seconds.`,
      more: (size) => `That is ${size} seconds more.`,
      less: (size) => `That is ${size} seconds less.`,
    },
  ],
  ['one-minute-sit-to-stand', stands('in one minute')],
  ['thirty-second-sit-to-stand', stands('in half a minute')],
  [
    'five-repetition-sit-to-stand',
    {
      kind: 'result',
      first: (value) => `At the start it took you ${value} seconds to stand up from a chair five times.`,
      then: (value) => `At the end it took ${value} seconds.`,
      more: (size) => `That is ${size} seconds faster.`,
      less: (size) => `That is ${size} seconds slower.`,
    },
  ],
  ['mrc-dyspnoea', { kind: 'feeling', about: 'how soon you get short of breath' }],
  ['mmrc-dyspnoea', { kind: 'feeling', about: 'how soon you get short of breath' }],
  ['cat-total', { kind: 'feeling', about: 'how your chest makes your days' }],
  ['crq-dyspnoea', { kind: 'feeling', about: 'being short of breath' }],
  ['crq-fatigue', { kind: 'feeling', about: 'how tired you are' }],
  ['crq-emotional-function', { kind: 'feeling', about: 'how you feel in yourself' }],
  ['crq-mastery', { kind: 'feeling', about: 'how well you cope with your chest' }],
  ['sgrq-total', { kind: 'feeling', about: 'how your chest makes your days' }],
  ['k-bild-total', { kind: 'feeling', about: 'how your chest makes your days' }],
  ['eq-vas', { kind: 'feeling', about: 'how good your health is' }],
  ['hads-anxiety', { kind: 'feeling', about: 'how much you worry' }],
  ['gad-7', { kind: 'feeling', about: 'how much you worry' }],
  ['hads-depression', { kind: 'feeling', about: 'your mood' }],
  ['phq-9', { kind: 'feeling', about: 'your mood' }],
]);
