import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Citation } from '../../../src/domain/evidence/citation.js';
import { evidenceMark } from '../../../src/domain/evidence/citation.js';
import { SAFETY_ITEMS } from '../../../src/domain/safety/conduct.js';
import {
  DESATURATION_DEFINITION_IDS,
  DESATURATION_DEFINITIONS,
} from '../../../src/domain/safety/desaturation.js';
import { SAFETY_CHECKLIST } from '../../../src/domain/safety/registered.js';
import { RESTING_LIMITS } from '../../../src/domain/safety/resting-limits.js';

/*
 * Fails when an item, a limit or a meaning has no source, no status or no check against its source. A check is a call in
 * a file of tests/published that names the entry as its first argument.
 */
const publishedTests = readdirSync('tests/published')
  .filter((file) => file.endsWith('.test.ts'))
  .map((file) => readFileSync(join('tests/published', file), 'utf8'));

const CHECKS = [
  { check: 'publishedSafetyItem', ids: SAFETY_ITEMS.map((item) => item.id) },
  { check: 'publishedSafetyList', ids: SAFETY_CHECKLIST.map((list) => list.id) },
  { check: 'publishedRestingLimit', ids: RESTING_LIMITS.map((limit) => limit.id) },
  { check: 'publishedDesaturation', ids: DESATURATION_DEFINITION_IDS },
];

const citations: readonly Citation[] = [
  ...SAFETY_ITEMS.flatMap((item) => [item.citation, ...item.furtherSources]),
  ...RESTING_LIMITS.map((limit) => limit.citation),
  ...DESATURATION_DEFINITION_IDS.map((id) => DESATURATION_DEFINITIONS[id].citation),
];

describe('every entry of safety', () => {
  it.each(CHECKS)('has a check against its source: $check', ({ check, ids }) => {
    expect(namedBy(check).toSorted()).toEqual([...ids].toSorted());
  });

  it('has an id of its own, in kebab-case', () => {
    for (const { ids } of CHECKS) {
      expect(ids).toEqual([...new Set(ids)]);
      expect(ids.filter((id) => !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id))).toEqual([]);
    }
  });

  it('has a source with words and a status', () => {
    for (const { id, text, doi, status } of citations) {
      expect(text.length, id).toBeGreaterThan(9);
      expect(doi ?? '10.0/none', id).toMatch(/^10\.\d+\/\S+$|^10\.0\/none$/);
      // A status that is none of the known ones has no mark at all.
      expect(evidenceMark(status), id).not.toBeUndefined();
    }
  });
});

describe('the checklist', () => {
  it('grades every contraindication, and can be ticked only where something can be found', () => {
    for (const list of SAFETY_CHECKLIST) {
      for (const item of list.items) {
        if (list.stage === 'before-a-test') {
          expect(['absolute', 'relative'], item.id).toContain(item.strength);
          expect(item.canBeFound, item.id).toBe(true);
        } else {
          expect([null, 'local'], item.id).toContain(item.strength);
        }
        if (list.stage === 'conduct-of-tests' || list.stage === 'exercise-at-home') {
          expect(item.canBeFound, item.id).toBe(false);
        }
      }
    }
  });

  it('shares the id of a limit at rest only with the item of the same source', () => {
    const shared = RESTING_LIMITS.flatMap((limit) => {
      const item = SAFETY_ITEMS.find((each) => each.id === limit.id);
      return item === undefined ? [] : [{ id: item.id, isSame: item.citation === limit.citation }];
    });
    expect(shared).toEqual([{ id: 'resting-saturation-at-or-below-85', isSame: true }]);
  });
});

function namedBy(check: string): readonly string[] {
  const call = new RegExp(`${check}\\(\\s*'([^']+)'`, 'g');
  return publishedTests.flatMap((text) => [...text.matchAll(call)].map((match) => match[1] ?? ''));
}
