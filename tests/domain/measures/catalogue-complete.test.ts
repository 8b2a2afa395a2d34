import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Citation } from '../../../src/domain/evidence/citation.js';
import { evidenceMark } from '../../../src/domain/evidence/citation.js';
import { compare, fraction } from '../../../src/domain/exact/fraction.js';
import { MEASURES } from '../../../src/domain/measures/catalogue.js';
import {
  PHYSICAL_TESTS,
  QUESTIONNAIRES,
  SIT_TO_STAND_TESTS,
  WALK_TESTS,
} from '../../../src/domain/measures/registered.js';

/*
 * Fails when an entry of the catalogue has no source, no status or no check against its source. A check is a call in a
 * file of tests/published that names the entry as its first argument.
 */
const publishedTests = readdirSync('tests/published')
  .filter((file) => file.endsWith('.test.ts'))
  .map((file) => readFileSync(join('tests/published', file), 'utf8'));

const thresholds = MEASURES.flatMap((measure) => measure.thresholds);
const bandSets = MEASURES.flatMap((measure) => measure.bands);
const instruments = [...WALK_TESTS, ...SIT_TO_STAND_TESTS, ...QUESTIONNAIRES, ...PHYSICAL_TESTS];

const citations: readonly Citation[] = [
  ...MEASURES.map((measure) => measure.range.citation),
  ...thresholds.map((threshold) => threshold.citation),
  ...bandSets.map((bandSet) => bandSet.citation),
  ...QUESTIONNAIRES.flatMap(({ scoringRule, missingItemRule, licenceNote, formLimits }) => [
    scoringRule.citation,
    missingItemRule.citation,
    licenceNote.citation,
    ...formLimits.map((limits) => limits.citation),
  ]),
  ...PHYSICAL_TESTS.flatMap(({ scoringRule, licenceNote }) => [
    ...(scoringRule === null ? [] : [scoringRule.citation]),
    licenceNote.citation,
  ]),
];

describe('every entry', () => {
  it('has an id of its own, in kebab-case', () => {
    for (const entries of [MEASURES, thresholds, bandSets, instruments]) {
      const ids = entries.map((entry) => entry.id);
      expect(ids).toEqual([...new Set(ids)]);
      expect(ids.filter((id) => !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id))).toEqual([]);
    }
  });

  it('has a source with words and a status', () => {
    for (const { id, text, doi, status } of citations) {
      expect(id, text).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(text.length, id).toBeGreaterThan(9);
      expect(doi ?? '10.0/none', id).toMatch(/^10\.\d+\/\S+$|^10\.0\/none$/);
      // A status that is none of the known ones has no mark at all.
      expect(evidenceMark(status), id).not.toBeUndefined();
    }
  });

  it('names one source by one id', () => {
    const texts = new Map<string, string>();
    for (const { id, text, doi } of citations) {
      const known = texts.get(id);
      expect(known ?? `${text} ${String(doi)}`, id).toBe(`${text} ${String(doi)}`);
      texts.set(id, `${text} ${String(doi)}`);
    }
  });
});

describe('every check against a source', () => {
  it('exists for each threshold', () => {
    expect(
      thresholds.map((threshold) => threshold.id).filter((id) => !isNamed('publishedThreshold', id)),
    ).toEqual([]);
  });

  it('exists for the limits of each measure', () => {
    expect(MEASURES.map((measure) => measure.id).filter((id) => !isNamed('publishedRange', id))).toEqual([]);
  });

  it('exists for each set of bands', () => {
    expect(bandSets.map((bandSet) => bandSet.id).filter((id) => !isNamed('publishedBands', id))).toEqual([]);
  });

  it('exists for the scoring of each questionnaire that is scored from items', () => {
    const scored = QUESTIONNAIRES.filter((questionnaire) => questionnaire.scoreItems !== null);
    const unchecked = scored.filter(
      ({ id }) =>
        !publishedTests.some((text) => text.includes('publishedScores(') && text.includes(`'${id}'`)),
    );
    expect(unchecked.map((questionnaire) => questionnaire.id)).toEqual([]);
  });

  it('names no entry that is not in the catalogue', () => {
    const known = new Set([...thresholds, ...MEASURES, ...bandSets].map((entry) => entry.id));
    const named = publishedTests.flatMap((text) =>
      [...text.matchAll(/published(?:Threshold|Range|Bands)\(\s*'([^']+)'/g)].map((match) => match[1] ?? ''),
    );
    expect(named.length).toBeGreaterThan(100);
    expect(named.filter((id) => !known.has(id))).toEqual([]);
  });
});

describe('every measure', () => {
  it.each(MEASURES.map((measure) => [measure.id, measure] as const))('%s has sound limits', (_, measure) => {
    const { range, checkRange } = measure;
    expect(compare(range.min, range.max)).toBeLessThan(0);
    if (range.step !== null) expect(compare(range.step, fraction(0))).toBeGreaterThan(0);
    if (checkRange === null) return;
    expect(compare(checkRange.min, range.min)).toBeGreaterThanOrEqual(0);
    expect(compare(checkRange.max, range.max)).toBeLessThanOrEqual(0);
    expect(compare(checkRange.min, checkRange.max)).toBeLessThan(0);
  });

  it.each(MEASURES.map((measure) => [measure.id, measure] as const))(
    '%s has at most one default, for improvement and with a value',
    (_, measure) => {
      const defaults = measure.thresholds.filter((threshold) => threshold.isDefault);
      expect(defaults.length).toBeLessThanOrEqual(1);
      for (const chosen of defaults) {
        expect(chosen.purpose).toBe('improvement');
        expect(chosen.value).not.toBeNull();
      }
    },
  );

  it.each(MEASURES.map((measure) => [measure.id, measure] as const))(
    '%s has bands without gaps over its whole range, and one default set',
    (_, { bands, range }) => {
      for (const { bands: rows } of bands) {
        expect(rows[0] && fraction(rows[0].from)).toEqual(range.min);
        expect(fraction(rows.at(-1)?.to ?? Number.NaN)).toEqual(range.max);
        rows.slice(1).forEach((row, index) => expect(row.from).toBe((rows[index]?.to ?? Number.NaN) + 1));
      }
      expect(bands.filter((bandSet) => bandSet.isDefault)).toHaveLength(bands.length > 0 ? 1 : 0);
    },
  );
});

describe('every threshold', () => {
  it.each(thresholds.map((threshold) => [threshold.id, threshold] as const))(
    '%s is sound',
    (_, threshold) => {
      const { value, interval, population, method } = threshold;
      expect(population).not.toBe('');
      expect(method).not.toBe('');
      // A source that gives no value gives a range.
      if (value === null) expect(interval).not.toBeNull();
      else expect(compare(value, fraction(0))).toBeGreaterThan(0);
      if (interval === null) return;
      expect(compare(interval.low, interval.high)).toBeLessThan(0);
      if (value === null) return;
      expect(compare(interval.low, value)).toBeLessThanOrEqual(0);
      expect(compare(value, interval.high)).toBeLessThanOrEqual(0);
    },
  );
});

function isNamed(check: string, id: string): boolean {
  const call = new RegExp(`${check}\\(\\s*'${id}'`);
  return publishedTests.some((text) => call.test(text));
}
