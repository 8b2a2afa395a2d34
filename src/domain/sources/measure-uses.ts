import { MEASURES } from '../measures/catalogue.js';
import type { Measure } from '../measures/measure.js';
import type { PhysicalTest } from '../measures/physical-test.js';
import { PROMPT_SOURCES } from '../measures/prompts.js';
import type { Questionnaire } from '../measures/questionnaire.js';
import { PHYSICAL_TESTS, QUESTIONNAIRES } from '../measures/registered.js';
import { usesOf } from './citation-use.js';
import type { CitationUse } from './citation-use.js';

/** What the measures cite: limits, thresholds, bands, scoring, missing items, terms of use, prompts. */
export function measureUses(): readonly CitationUse[] {
  return [
    ...MEASURES.flatMap(ofMeasure),
    ...QUESTIONNAIRES.flatMap(ofQuestionnaire),
    ...PHYSICAL_TESTS.flatMap(ofPhysicalTest),
    ...PROMPT_SOURCES.map(({ prompt, words, citation }) => ({
      citation,
      use: `prompt ${prompt}`,
      words: `prompt: ${words}`,
    })),
  ];
}

function ofMeasure({ id, name, range, thresholds, bands }: Measure): readonly CitationUse[] {
  return [
    { citation: range.citation, use: `limits of ${id}`, words: `limits of the entry: ${name}` },
    ...thresholds.map((threshold) => ({
      citation: threshold.citation,
      use: `threshold ${threshold.id}`,
      words: `MID: ${name}`,
    })),
    ...bands.map((set) => ({ citation: set.citation, use: `bands ${set.id}`, words: `bands: ${name}` })),
  ];
}

function ofQuestionnaire(questionnaire: Questionnaire): readonly CitationUse[] {
  const { id, name, scoringRule, missingItemRule, licenceNote, formLimits } = questionnaire;
  return [
    { citation: scoringRule.citation, use: `scoring of ${id}`, words: `scoring: ${name}` },
    { citation: missingItemRule.citation, use: `missing items of ${id}`, words: `missing items: ${name}` },
    { citation: licenceNote.citation, use: `terms of use of ${id}`, words: `terms of use: ${name}` },
    ...usesOf(
      `limits of the forms of ${id}`,
      `limits of the forms: ${name}`,
      formLimits.map((limits) => limits.citation),
    ),
  ];
}

function ofPhysicalTest({ id, name, scoringRule, licenceNote }: PhysicalTest): readonly CitationUse[] {
  return [
    ...(scoringRule === null
      ? []
      : [{ citation: scoringRule.citation, use: `scoring of ${id}`, words: `scoring: ${name}` }]),
    { citation: licenceNote.citation, use: `terms of use of ${id}`, words: `terms of use: ${name}` },
  ];
}
