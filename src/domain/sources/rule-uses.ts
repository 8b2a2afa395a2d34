import { FIGURE_RULES } from '../indicators/figure-rules.js';
import { COMPLETION_RULES } from '../pathway/completion.js';
import type { CitationUse } from './citation-use.js';

/** What the rules of counting cite: every figure of a report, and the readings of completion. */
export function ruleUses(): readonly CitationUse[] {
  return [
    ...FIGURE_RULES.map(({ ruleId, source }) => ({
      citation: source,
      use: `rule ${ruleId}`,
      words: `rule ${ruleId}`,
    })),
    ...Object.values(COMPLETION_RULES).map(({ ruleId, source }) => ({
      citation: source,
      use: `rule ${ruleId}`,
      words: `rule ${ruleId}`,
    })),
  ];
}
