import { plainDate } from '../../src/domain/calendar/plain-date.js';
import type { ReferralFacts } from '../../src/domain/cohort/referral-facts.js';
import { DEFAULT_TEAM_SETTINGS } from '../../src/domain/settings/team-settings.js';
import { buildOutcomes } from '../../src/reports/outcomes/build-outcomes.js';
import type { Letter, LetterInput } from '../../src/reports/letters/letter-model.js';
import { aCourse } from './facts.js';

/** What a letter about a referral is built from, as at the end of 2026. */
export function letterInput(facts: Partial<ReferralFacts>): LetterInput {
  const course = aCourse(facts);
  const outcomes = buildOutcomes({
    facts: course.facts,
    asAt: course.asAt,
    settings: DEFAULT_TEAM_SETTINGS,
    settingsVersion: 1,
    standing: [],
    diary: [],
  });
  if (outcomes === null) throw new Error('The referral was received after the cut.');
  const person = {
    givenName: 'Mavis',
    familyName: 'Sandwort',
    bornOn: plainDate('1954-03-09'),
    nhsNumber: '9990000018',
  };
  return { person, teamName: 'Marram Coast PR team', course, outcomes };
}

/** Every sentence and cell of a letter. */
export function textsOf(letter: Letter): readonly string[] {
  return letter.blocks.flatMap((block) => {
    switch (block.kind) {
      case 'heading':
      case 'paragraph':
        return [block.text];
      case 'list':
        return block.items;
      case 'table':
        return [block.caption, ...block.columns, ...block.rows.flat()];
      case 'signature':
        return block.lines;
    }
  });
}

/**
 * School grade at which a text reads.
 *
 * Source: Kincaid JP and others 1975, Research Branch Report 8-75, Naval Air Station Memphis: grade = 0.39 words per
 * sentence + 11.8 syllables per word - 15.59. Syllables are groups of vowels, a silent e at the end left out.
 */
export function readingGrade(text: string): number {
  const sentences = text.split(/[.!?]+(?:\s|$)/).filter((part) => /[a-z]/i.test(part)).length;
  const words = text.match(/[A-Za-z']+|\d+/g) ?? [];
  const syllables = words.reduce((sum, word) => sum + syllablesOf(word), 0);
  return (0.39 * words.length) / sentences + (11.8 * syllables) / words.length - 15.59;
}

function syllablesOf(word: string): number {
  if (/^\d+$/.test(word)) return 1;
  const spoken = word.toLowerCase().replace(/(?:[^laeiouy]|[aeiouy]l)e$/, (end) => end.slice(0, -1));
  return Math.max(1, spoken.match(/[aeiouy]+/g)?.length ?? 1);
}
