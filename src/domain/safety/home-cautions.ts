import type { LocatedResult } from '../assessment/results.js';
import { findMeasure } from '../measures/catalogue.js';
import { findSafetyItem } from './conduct.js';
import type { DoneWalks } from './done-walks.js';
import type { SafetyCaution } from './safety-caution.js';
import { cautionToShow } from './safety-caution.js';

/**
 * Tests that were done at home: each is marked, and not compared with one from a course.
 *
 * A walk test is marked when any of its attempts was done at home, whichever was the better.
 */
export function homeCautions(
  walks: readonly DoneWalks[],
  results: readonly LocatedResult[],
): readonly SafetyCaution[] {
  const rule = findSafetyItem('home-test-not-compared');
  if (rule === undefined) return [];
  const walked = walks
    .filter(({ attempts }) => attempts.some((walk) => walk.place === 'home'))
    .map(({ test }) => test.measure.id);
  const others = results.filter((result) => result.conditions['place'] === 'home');
  const measureIds = [...new Set([...walked, ...others.map((result) => result.measureId)])];
  return measureIds.map((measureId) => {
    const name = findMeasure(measureId)?.shortName ?? measureId;
    const text = `${name}: done at home. It is not compared with a result from a course.`;
    return cautionToShow({ id: 'done-at-home', measureId, text, citation: rule.citation });
  });
}
