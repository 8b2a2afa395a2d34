import { describe, expect, it } from 'vitest';
import { evidenceMark } from '../../../src/domain/evidence/citation.js';

describe('the mark beside a figure', () => {
  it('is absent only where the source was read', () => {
    expect(evidenceMark('retrieved')).toBeNull();
  });

  it.each([
    ['retrieved-indirect', 'quoted in another paper'],
    ['value-from-memory', 'from memory, check before use'],
    ['from-memory', 'from memory, check before use'],
    ['common-practice', 'common practice'],
    ['derived', 'derived'],
  ] as const)('%s says "%s"', (status, mark) => {
    expect(evidenceMark(status)).toBe(mark);
  });
});
