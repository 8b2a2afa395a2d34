import { findEquation } from '../../domain/prediction/catalogue.js';
import type { TeamSettings } from '../../domain/settings/team-settings.js';
import type { FigureCounter } from './figure-counter.js';
import type { DefinitionsUsed, EquationUsed } from './definitions-model.js';
import type { MeasureOutcomes, PercentPredicted } from './report-model.js';
import { sourceOf } from './source.js';

const METHODS = [
  'Percentages: 95 % interval by the score method of Wilson (Newcombe 1998), without continuity correction',
  'Mean change: of people measured at both ends; 95 % interval by the t distribution; the standardised response mean is the mean change divided by the standard deviation (SD) of the changes',
  'Reached the minimal important difference (MID), if none or all of those not measured again had: of those with a baseline result, those who reached it, and those with everybody not measured again',
  'Median and quartiles: type 7 of Hyndman and Fan (1996)',
  'Started by a day: cumulative incidence of Aalen and Johansen over everybody referred; leaving without a start competes with it, whoever still waits on the day of the data cut is followed up to that day; 95 % interval on the log(-log) scale',
  'Difference of a group to the rest, and of two periods: 95 % interval by the hybrid score method of Newcombe (1998)',
  'Against a target: beyond chance where the 95 % interval leaves the target out however the open referrals end; nothing is claimed of fewer than 30',
  'Difference of two mean changes: 95 % interval by the method of Welch (1947)',
  'Earlier periods are seen as long after their end as the report, and counted by the settings of today; of twenty comparisons in which nothing changed, one is beyond chance by chance',
  'Charts over time: p chart for shares, XmR chart for other values, limits from all quarters shown: of a p chart three standard deviations of the binomial about all quarters together, of an XmR chart 2.66 times the mean difference of neighbours about the mean (NIST/SEMATECH e-Handbook 6.3.2.2 and 6.3.3.2), cut off at 0 for what cannot be negative; with fewer than twelve values a run chart about the median; nothing is claimed of fewer than 30 referrals',
  'Sites: from five on, exact binomial limits (95 and 99.8 %) about the percentage of all sites (Spiegelhalter 2005, interpolation from memory), which lie about half a person low; a site outside a limit is named where chance, too, gives so few or so many less often than the limit says; nothing is claimed of fewer than 30, and none is ranked',
  'Where there is no number, pages, PDF and text say none where nobody is counted and n/a where it does not apply or cannot be said; spreadsheets and CSV leave the cell empty',
  'Open referrals are neither success nor failure; the bounds are the percentage if none, or all, of them came to count',
  'Registrations in error are left out of every figure, and counted',
  'Every number of the report stands in JSON, in CSV, and in the spreadsheet on the sheet All numbers',
  'Pages and PDF leave out of their tables what is drawn: the steps of the waiting curve between the days of its table, the centre of a chart, and the width of the classes of a spread',
  'Pages and PDF leave out what stands beside another number of the same people: mean and standard deviation of simple waits; medians and quartiles of both ends; standard deviation of a change; percentage and interval of those who wait, were seen so long, reached a step or left, or are not closed; interval and bounds of an earlier period; how many people stand behind a figure',
  'The text is a shorter form: it leaves out what pages do, and the sentences on top, the steps from referral to completion, the waiting curve and who waits now, of changes their median, standardised response mean, spread, pairs at home and little change of all pairs, breakdowns, sites, published figures, earlier periods and trend',
] as const;

/** Everything by which the report was counted; called last, when every rule has been used. */
export function definitionsUsed(
  settings: TeamSettings,
  outcomes: readonly MeasureOutcomes[],
  percentPredicted: readonly PercentPredicted[],
  { rulesUsed }: FigureCounter,
): DefinitionsUsed {
  return {
    completionReading: settings.completionReading,
    rules: rulesUsed(),
    thresholds: outcomes.flatMap(({ measureId, shortName, thresholds }) =>
      thresholds.map((threshold) => ({ measureId, shortName, ...threshold })),
    ),
    equations: percentPredicted.flatMap(({ measureId, equationId }) => equationUsed(measureId, equationId)),
    methods: METHODS,
  };
}

function equationUsed(measureId: string, equationId: string): readonly EquationUsed[] {
  const equation = findEquation(equationId);
  if (equation === null) return [];
  const { title, population, agesStudiedYears, cautions, citation } = equation;
  return [
    {
      equationId,
      measureId,
      title,
      population,
      agesStudiedYears: { min: agesStudiedYears.min, max: agesStudiedYears.max },
      cautions,
      source: sourceOf(citation),
    },
  ];
}
