import { SAFETY_ITEMS } from '../safety/conduct.js';
import { DESATURATION_DEFINITIONS } from '../safety/desaturation.js';
import { RESTING_LIMITS } from '../safety/resting-limits.js';
import { COURSE_LENGTH_PRACTICE } from '../safety/safety-sources.js';
import { usesOf } from './citation-use.js';
import type { CitationUse } from './citation-use.js';

/** What safety cites: the checklist, limits at rest, meanings of desaturation, what cautions add. */
export function safetyUses(): readonly CitationUse[] {
  return [
    ...SAFETY_ITEMS.flatMap(({ id, text, citation, furtherSources }) =>
      usesOf(`checklist item ${id}`, `safety checklist: ${text}`, [citation, ...furtherSources]),
    ),
    ...RESTING_LIMITS.map(({ id, label, reachedWhen, value, unit, citation }) => ({
      citation,
      use: `resting limit ${id}`,
      words: `limit: ${label} ${REACHED_WORDS[reachedWhen]} ${value} ${unit}`,
    })),
    ...Object.values(DESATURATION_DEFINITIONS).map(({ id, text, citation }) => ({
      citation,
      use: `desaturation ${id}`,
      words: `desaturation: ${text}`,
    })),
    {
      citation: COURSE_LENGTH_PRACTICE,
      use: 'caution course-length-not-usual',
      words: 'caution: length of the course',
    },
  ];
}

const REACHED_WORDS = {
  above: 'above',
  'at-or-above': 'at or above',
  below: 'below',
  'at-or-below': 'at or below',
};
