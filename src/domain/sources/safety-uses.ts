import { SAFETY_ITEMS } from '../safety/conduct.js';
import { DESATURATION_DEFINITIONS } from '../safety/desaturation.js';
import { RESTING_LIMITS } from '../safety/resting-limits.js';
import { COURSE_LENGTH_PRACTICE } from '../safety/safety-sources.js';
import { usesOf } from './citation-use.js';
import type { CitationUse } from './citation-use.js';

/** What safety cites: the checklist, limits at rest, meanings of desaturation, what cautions add. */
export function safetyUses(): readonly CitationUse[] {
  return [
    ...SAFETY_ITEMS.flatMap(({ id, citation, furtherSources }) =>
      usesOf(`checklist item ${id}`, [citation, ...furtherSources]),
    ),
    ...RESTING_LIMITS.map(({ id, citation }) => ({ citation, use: `resting limit ${id}` })),
    ...Object.values(DESATURATION_DEFINITIONS).map(({ id, citation }) => ({
      citation,
      use: `desaturation ${id}`,
    })),
    { citation: COURSE_LENGTH_PRACTICE, use: 'caution course-length-not-usual' },
  ];
}
