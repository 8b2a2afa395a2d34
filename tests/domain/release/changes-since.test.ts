import { describe, expect, it } from 'vitest';
import { canonicalText, readReleased } from '../../../src/domain/release/canonical.js';
import { withChanges } from '../../../src/domain/release/changes-since.js';
import type { ProtectedRelease } from '../../../src/domain/release/protected-release.js';
import { releaseDocument } from '../../../src/reports/release/release-document.js';
import { releaseOf } from '../../support/rendered-release.js';

/** A rounded release of people by age, alike in all else. */
function ofAges(number: number, ages: Readonly<Record<string, number>>): ProtectedRelease {
  const received = Object.entries(ages).flatMap(([age, count]) =>
    Array.from({ length: count }, () => ({
      start: 'within-90',
      'first-assessment': 'assessed',
      pathway: 'stable',
      source: 'general-practice',
      diagnosis: 'copd',
      age,
      deprivation: 'fifth-1',
    })),
  );
  const quarter = { received, assessed: [], started: [], discharged: [] };
  const period = { label: '2026-27-Q1', kind: 'quarter' } as const;
  const { release } = releaseOf([quarter], { number, mode: 'rounded', period }, []);
  const correction = number === 1 ? null : { ofNumber: 1, reason: 'Entered late', changes: [] };
  return { ...release, correction };
}

const FIRST = ofAges(1, { '60-69': 40, '70-79': 22, 'under-50': 5, '80-and-over': 30 });

describe('a correction', () => {
  it('states each count that both print and that differs, and none that is hidden in either', () => {
    // 40 to 43 is printed as 40 and 45; 22 to 21 as 20 twice; 5 is hidden and 9 is printed as 10; 97 to 103 as 95 and 105.
    const second = ofAges(2, { '60-69': 43, '70-79': 21, 'under-50': 9, '80-and-over': 30 });
    const { correction } = withChanges(second, FIRST);
    const stated = correction?.changes.map(({ tableTitle, words, before, after }) => [
      tableTitle,
      words,
      before.kind === 'shown' && before.value,
      after.kind === 'shown' && after.value,
    ]);
    expect(stated).toContainEqual(['Referrals counted', 'Referrals received in the period', 95, 105]);
    expect(stated?.filter(([title]) => title === 'Age')).toEqual([['Age', '60 to 69', 40, 45]]);
  });

  it('has its difference as a table of the document', () => {
    const second = ofAges(2, { '60-69': 43, '70-79': 21, 'under-50': 5, '80-and-over': 30 });
    const text = JSON.stringify(releaseDocument(withChanges(second, FIRST)));
    expect(text).toContain('Counts that differ from release 1');
    expect(text).toContain('Entered late');
    expect(JSON.stringify(releaseDocument(FIRST))).not.toContain('What was corrected');
  });

  it('says so where no printed count differs', () => {
    const second = ofAges(2, { '60-69': 40, '70-79': 21, 'under-50': 6, '80-and-over': 30 });
    expect(withChanges(second, FIRST).correction?.changes).toEqual([]);
    expect(JSON.stringify(releaseDocument(second))).toContain('No count that both of them show differs.');
  });

  it('is read back with it, and one of before without', () => {
    const second = withChanges(ofAges(2, { '60-69': 43, '70-79': 22, 'under-50': 5 }), FIRST);
    expect(readReleased(canonicalText(second))).toEqual(second);
    const old = canonicalText(second).replace(/"changes":\[.*?\],"ofNumber"/, '"ofNumber"');
    expect(readReleased(old).correction).toEqual({ ofNumber: 1, reason: 'Entered late', changes: [] });
  });
});
