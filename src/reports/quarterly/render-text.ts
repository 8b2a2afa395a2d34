import { periodWords } from '../../domain/calendar/period-words.js';
import { COHORT_KINDS } from '../../domain/cohort/cohorts.js';
import { COMPLETION_RULES } from '../../domain/pathway/completion.js';
import type { DefinitionsUsed } from './definitions-model.js';
import type { IndicatorRow, QuarterlyReport, WaitSummary } from './report-model.js';
import { dataQualityLines } from './text-data-quality.js';
import { figureHeader, figureLines, leftOutLines, plainFigureLines } from './text-figures.js';
import { heading, wrap } from './text-layout.js';
import { counted, coverWords, MARK_WORDS, rounded } from './text-numbers.js';
import { outcomeLines, percentPredictedLines } from './text-outcomes.js';
import { verdictWords } from './verdict-words.js';

/**
 * The quarterly report as text for a terminal: at most 100 columns, every percentage beside its counts.
 *
 * Numbers are rounded here, once: percentages and days to one decimal, statistics of a measure by its unit.
 */
export function renderQuarterlyReportText(report: QuarterlyReport): string {
  const lines = [
    ...titleLines(report),
    ...referralLines(report),
    ...heading('Uptake (referral cohort)'),
    ...figureHeader(),
    ...figureLines(report.uptake.assessed),
    ...figureLines(report.uptake.started),
    ...heading('Waits (referral cohort)'),
    ...report.waits.flatMap(waitLines),
    ...completionLines(report),
    ...heading('Reasons'),
    ...reasonLines(report),
    ...heading('Outcomes (discharge cohort, those who had started)'),
    ...(report.outcomes.length === 0 ? ['Nothing was measured.'] : report.outcomes.flatMap(outcomeLines)),
    ...heading('Percentage of predicted (like-for-like pairs within the ages studied)'),
    ...(report.percentPredicted.length === 0
      ? ['Nothing was predicted.']
      : report.percentPredicted.flatMap(percentPredictedLines)),
    ...heading('Indicators against targets'),
    ...figureHeader(),
    ...report.indicators.flatMap((row, index) => [
      ...cohortHeader(row, report.indicators[index - 1]),
      ...indicatorLines(row),
    ]),
    ...heading('Quality of the record'),
    ...dataQualityLines(report),
    ...definitionLines(report.definitions),
  ];
  return `${lines.join('\n')}\n`;
}

function titleLines({
  teamName,
  period,
  asAt,
  settingsVersion,
  provisional,
}: QuarterlyReport): readonly string[] {
  const state = provisional.isProvisional ? 'PROVISIONAL' : 'Every referral is closed';
  const notes = [...(provisional.isPeriodOver ? [] : ['the period is not over']), ...provisional.notes];
  return [
    ...wrap(`${teamName}: ${periodWords(period)}`),
    ...wrap(`${coverWords(period, asAt)} Settings version ${settingsVersion}.`),
    ...wrap(notes.length === 0 ? `${state}.` : `${state}: ${notes.join('; ')}.`),
    ...wrap(
      `Where there is no number: ${Object.entries(MARK_WORDS)
        .map(([mark, words]) => `${mark}: ${words}`)
        .join('; ')}.`,
    ),
  ];
}

function referralLines({ cohorts, referrals, dataQuality }: QuarterlyReport): readonly string[] {
  const cohortLines = COHORT_KINDS.flatMap((kind) => {
    const { words, referrals: count, people, registeredInError } = cohorts[kind];
    const error = registeredInError === 0 ? '' : `; left out: ${registeredInError} registered in error`;
    return wrap(
      `${kind} cohort: ${counted(count, 'referral')} of ${people} ${people === 1 ? 'person' : 'people'}${error}. ${words}.`,
    );
  });
  return [
    ...heading('Cohorts and referrals'),
    ...cohortLines,
    ...wrap(`${dataQuality.entriesInError.words}.`),
    ...figureHeader('Referrals by source, pathway and diagnosis'),
    ...[...referrals.bySource, ...referrals.byPathway, ...referrals.byDiagnosis].flatMap((figure) =>
      plainFigureLines(figure),
    ),
  ];
}

function waitLines(wait: WaitSummary): readonly string[] {
  const { n, median, lowerQuartile, upperQuartile } = wait.daysOfThoseWhoReachedIt;
  const longest =
    wait.longestStillWaitingDays === null ? '' : `, the longest for ${wait.longestStillWaitingDays} days`;
  const passed =
    (wait.passedOver?.numerator ?? 0) > 0 ? `; ${wait.passedOver?.numerator} started without it` : '';
  const all = wait.reached.denominator;
  return [
    ...wrap(`${wait.title}: ${counted(all, 'referral')}`),
    ...wrap(
      n === 0
        ? 'nobody has reached it'
        : `of the ${n} who reached it: median ${rounded(median, 1)} days ` +
            `(quartiles ${rounded(lowerQuartile, 1)} to ${rounded(upperQuartile, 1)}); people still waiting are not in this`,
      4,
    ),
    ...wrap(
      `still waiting: ${wait.stillWaiting.numerator} of ${all}${longest}; left: ${wait.left.numerator} of ${all}${passed}`,
      4,
    ),
    ...leftOutLines(wait.reached),
  ];
}

function completionLines({ completion }: QuarterlyReport): readonly string[] {
  return [
    ...heading('Completion (of started: start cohort; of assessed and referred: referral cohort)'),
    ...figureHeader(),
    ...completion.flatMap(({ title, ruleId, isHeadline, cells }) => [
      ...wrap(`${title} (rule ${ruleId})${isHeadline ? ': the headline of this team' : ''}`),
      ...cells.flatMap(({ of, all, withoutDeathsAndMoves }) => [
        ...plainFigureLines(all, `  of those ${of}`),
        ...leftOutLines(all),
        ...plainFigureLines(withoutDeathsAndMoves, '    without deaths, moves, transfers'),
        ...leftOutLines(withoutDeathsAndMoves),
      ]),
    ]),
  ];
}

function reasonLines({ reasons, definitions }: QuarterlyReport): readonly string[] {
  const { title } = COMPLETION_RULES[definitions.completionReading];
  return [
    ...figureHeader('Left before a start (referral cohort)'),
    ...(reasons.notStarting.length === 0 ? ['  nobody'] : []),
    ...reasons.notStarting.flatMap((figure) => plainFigureLines(figure, `  ${figure.title}`)),
    ...wrap(`Did not complete (start cohort), by the reading "${title}"`),
    ...(reasons.notCompleting.length === 0 ? ['  nobody'] : []),
    ...reasons.notCompleting.flatMap((figure) => plainFigureLines(figure, `  ${figure.title}`)),
  ];
}

/** Names the cohort where it changes from one row to the next. */
function cohortHeader({ figure }: IndicatorRow, former: IndicatorRow | undefined): readonly string[] {
  return figure.cohort === former?.figure.cohort ? [] : [`Of the ${figure.cohort} cohort`];
}

function indicatorLines({ figure, target, isReached, isBeyondChance }: IndicatorRow): readonly string[] {
  if (target === null) return figureLines(figure);
  const verdict = verdictWords({ isReached, isBeyondChance });
  return [
    ...figureLines(figure),
    ...wrap(`target ${rounded(target.percent, 1)} % (${target.source}): ${verdict}`, 4),
  ];
}

function definitionLines({ rules, equations, methods }: DefinitionsUsed): readonly string[] {
  return [
    ...heading('Definitions used'),
    ...rules.flatMap(({ ruleId, numerator, denominators, exclusions, source }) =>
      wrap(
        `${ruleId}: ${[numerator, `Of: ${denominators.join('; or: ')}`, ...leftOutText(exclusions), sourceText(source)].join('. ')}.`,
      ),
    ),
    ...equations.flatMap(({ equationId, title, population, agesStudiedYears: { min, max }, source }) =>
      wrap(
        `${equationId}: ${title}. ${population}. Ages studied ${min ?? 'not known'} to ${max ?? 'not known'}. ${sourceText(source)}.`,
      ),
    ),
    ...methods.flatMap((method) => wrap(`${method}.`)),
  ];
}

function leftOutText(exclusions: readonly string[]): readonly string[] {
  return exclusions.length === 0 ? [] : [`Left out: ${exclusions.join('; or: ')}`];
}

function sourceText({ text, mark }: { readonly text: string; readonly mark: string | null }): string {
  return `Source: ${text}${mark === null ? '' : ` [${mark}]`}`;
}
