import { GRADES_CONVERTED_BY } from '../../domain/measures/mrc-scales.js';
import type { QuarterlyReport } from './report-model.js';
import type { ConvertedPairs, PairsLost } from './section-models.js';
import { figureHeader, plainFigureLines } from './text-figures.js';
import { wrap } from './text-layout.js';

/** How far the record can be trusted: what to mend, completeness, lost pairs, and pairs by a converted grade. */
export function dataQualityLines({ dataQuality }: QuarterlyReport): readonly string[] {
  const { mendFirst, completeness, entry, confirmedValues, pairsLost, gradesConverted } = dataQuality;
  return [
    ...(mendFirst.length === 0 ? ['There is nothing to mend.'] : ['What to mend first']),
    ...mendFirst.flatMap(({ words }) => wrap(words, 2)),
    ...figureHeader('Completeness of each field'),
    ...completeness.flatMap((figure) => plainFigureLines(figure, `  ${figure.title}`)),
    ...figureHeader('Entry, and values confirmed'),
    ...[...entry, confirmedValues].flatMap((figure) => plainFigureLines(figure, `  ${figure.title}`)),
    ...(pairsLost.length === 0
      ? []
      : wrap('Pairs lost on the way, of those of the discharge cohort who had started')),
    ...pairsLost.flatMap(lostLines),
    ...convertedLines(gradesConverted),
  ];
}

function lostLines({ shortName, starters, pairs, lost }: PairsLost): readonly string[] {
  const reasons = lost.map(({ words, referrals }) => `${referrals} ${words}`);
  const less = reasons.length === 0 ? '' : `; the others: ${reasons.join(', ')}`;
  return wrap(`${shortName}: like-for-like pairs ${pairs} of ${starters}${less}`, 2);
}

function convertedLines(converted: readonly ConvertedPairs[]): readonly string[] {
  if (converted.length === 0) return [];
  const counts = converted.map(
    ({ shortName, pairs, ofPairs }) => `${shortName} ${pairs} of ${ofPairs} pairs`,
  );
  return wrap(`Pairs only by a converted grade: ${counts.join(', ')} (${GRADES_CONVERTED_BY})`);
}
