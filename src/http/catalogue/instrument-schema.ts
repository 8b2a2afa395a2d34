import { z } from 'zod';
import type { Citation } from '../../domain/evidence/citation.js';
import { toNumber } from '../../domain/exact/fraction.js';
import type { Measure } from '../../domain/measures/measure.js';
import type { PhysicalTest } from '../../domain/measures/physical-test.js';
import type { Questionnaire } from '../../domain/measures/questionnaire.js';
import {
  PHYSICAL_TESTS,
  QUESTIONNAIRES,
  SIT_TO_STAND_TESTS,
  WALK_TESTS,
} from '../../domain/measures/registered.js';
import type { SitToStandTest } from '../../domain/measures/sit-to-stand-test.js';
import type { WalkTest } from '../../domain/measures/walk-test.js';
import { CitationShown, presentCitation } from './citation-schema.js';

const rule = z.strictObject({ text: z.string(), source: CitationShown }).nullable();

export const InstrumentShown = z
  .strictObject({
    id: z.string().describe('What an assessment names as its test or questionnaire'),
    kind: z.enum(['walk-test', 'sit-to-stand', 'questionnaire', 'physical-test']),
    name: z.string(),
    shortName: z.string(),
    measures: z.array(z.string()).describe('Everything it yields: domains first, totals last'),
    records: z.array(z.string()).describe('What an assessment takes of it'),
    walk: z
      .strictObject({
        courseLengthM: z.strictObject({ min: z.number(), max: z.number(), usual: z.number() }),
        asksForPracticeWalk: z.boolean(),
        levels: z.int().nullable(),
        ceiling: z.number().nullable().describe('The test is stopped here, so that it is no measurement'),
      })
      .nullable(),
    items: z
      .array(z.strictObject({ fromItem: z.int(), toItem: z.int(), min: z.int(), max: z.int() }))
      .describe('Items in printed order, numbers only; empty where scores are typed'),
    forms: z.array(z.string()).describe('Of which one must be named and be the same at both ends'),
    formBelongsTo: z.array(z.string()).describe('Measures that need the form'),
    formLimits: z.array(
      z.strictObject({
        form: z.string(),
        measureId: z.string(),
        min: z.number(),
        max: z.number(),
        nextBelowMax: z.number().nullable(),
        source: CitationShown,
      }),
    ),
    parts: z.array(
      z.strictObject({
        id: z.string(),
        label: z.string(),
        minS: z.number(),
        maxS: z.number(),
        stepS: z.number(),
      }),
    ),
    conditions: z.array(z.strictObject({ id: z.string(), label: z.string(), values: z.array(z.string()) })),
    scoringRule: rule,
    missingItemRule: rule,
    licenceNote: rule,
  })
  .meta({ id: 'Instrument' });

type Shown = z.output<typeof InstrumentShown>;

/** The test or questionnaire that yields a measure. @throws RangeError where none does */
export function presentInstrumentOf(measure: Measure): Shown {
  const shown = BY_MEASURE.get(measure.id);
  if (shown === undefined) throw new RangeError(`Nothing yields ${measure.id}.`);
  return shown;
}

const NOTHING = {
  walk: null,
  items: [],
  forms: [],
  formBelongsTo: [],
  formLimits: [],
  parts: [],
  conditions: [],
  scoringRule: null,
  missingItemRule: null,
  licenceNote: null,
} satisfies Partial<Shown>;

const BY_MEASURE: ReadonlyMap<string, Shown> = new Map(
  [
    ...WALK_TESTS.map(presentWalkTest),
    ...SIT_TO_STAND_TESTS.map(presentSitToStand),
    ...QUESTIONNAIRES.map(presentQuestionnaire),
    ...PHYSICAL_TESTS.map(presentPhysicalTest),
  ].flatMap((shown) => shown.measures.map((measureId) => [measureId, shown] as const)),
);

function presentWalkTest(test: WalkTest): Shown {
  const { id, name, shortName, measure, courseLengthM, needsPracticeWalk, levels, ceiling } = test;
  const walk = {
    courseLengthM: { ...courseLengthM },
    asksForPracticeWalk: needsPracticeWalk,
    levels,
    ceiling,
  };
  const records = {
    distance: ['distanceM'],
    shuttles: ['distanceM', 'level', 'shuttles'],
    endurance: ['timeS', 'speedLevel'],
  };
  return {
    ...NOTHING,
    id,
    kind: 'walk-test',
    name,
    shortName,
    measures: [measure.id],
    records: records[test.records],
    walk,
  };
}

function presentSitToStand({ id, name, shortName, measure, records }: SitToStandTest): Shown {
  const fields = records === 'seconds' ? ['timeS'] : ['repetitions'];
  return { ...NOTHING, id, kind: 'sit-to-stand', name, shortName, measures: [measure.id], records: fields };
}

function presentQuestionnaire(questionnaire: Questionnaire): Shown {
  const { id, name, shortName, forms, formMeasureIds, formLimits } = questionnaire;
  const measures = questionnaire.measures.map((measure) => measure.id);
  return {
    ...NOTHING,
    id,
    kind: 'questionnaire',
    name,
    shortName,
    measures,
    records: questionnaire.items.length === 0 ? ['typedScores'] : ['items', 'typedScores'],
    items: itemRuns(questionnaire),
    forms: [...forms],
    formBelongsTo: forms.length === 0 ? [] : [...(formMeasureIds ?? measures)],
    formLimits: formLimits.map(({ form, measureId, min, max, nextBelowMax, citation }) => ({
      form,
      measureId,
      min: toNumber(min),
      max: toNumber(max),
      nextBelowMax: nextBelowMax === null ? null : toNumber(nextBelowMax),
      source: presentCitation(citation),
    })),
    scoringRule: presentRule(questionnaire.scoringRule),
    missingItemRule: presentRule(questionnaire.missingItemRule),
    licenceNote: presentRule(questionnaire.licenceNote),
  };
}

/** Items with the same limits that follow one another, as one row. */
function itemRuns({ items }: Questionnaire): Shown['items'] {
  const runs: Shown['items'] = [];
  items.forEach(({ min, max }, index) => {
    const last = runs.at(-1);
    if (last?.min === min && last.max === max) last.toItem = index + 1;
    else runs.push({ fromItem: index + 1, toItem: index + 1, min, max });
  });
  return runs;
}

function presentPhysicalTest(test: PhysicalTest): Shown {
  const { id, name, shortName, scoringRule, licenceNote } = test;
  return {
    ...NOTHING,
    id,
    kind: 'physical-test',
    name,
    shortName,
    measures: test.measures.map((measure) => measure.id),
    records: test.parts.length === 0 ? ['value'] : ['parts', 'value'],
    parts: test.parts.map((part) => ({
      id: part.id,
      label: part.label,
      minS: toNumber(part.min),
      maxS: toNumber(part.max),
      stepS: toNumber(part.step),
    })),
    conditions: test.conditions.map(({ id: condition, label, values }) => ({
      id: condition,
      label,
      values: [...values],
    })),
    scoringRule: scoringRule === null ? null : presentRule(scoringRule),
    licenceNote: presentRule(licenceNote),
  };
}

function presentRule({ text, citation }: { readonly text: string; readonly citation: Citation }) {
  return { text, source: presentCitation(citation) };
}
