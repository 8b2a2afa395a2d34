import type { JudgeContext } from '../indicators/indicator.js';
import { summarise } from '../statistics/summary.js';
import type { People } from './count-tables.js';
import type { IssuedRelease, IssuedTable } from './issued.js';
import { countOf } from './issued.js';
import { protectCount, sumOfShown } from './protected-count.js';
import type { ProtectedSummary } from './protected-release.js';
import { CHANGED_CATEGORIES, judgedChange, RELEASED } from './tables/how-they-changed.js';
import { START } from './tables/how-far-they-came.js';

/** A mean or median before anybody has looked whether it may be printed. */
export interface SummaryCandidate {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly kind: ProtectedSummary['kind'];
  /** One for each person, in the unit. */
  readonly values: readonly number[];
  /** The table and categories that hold the same people. */
  readonly tableId: string;
  readonly of: readonly string[];
}

/** Units in which a whole number tells enough of a mean change. */
const WHOLE_UNITS: readonly string[] = ['m', 's', 'repetitions', 'points'];
/** A sum of which one person makes up more than this is his or hers, in percent. */
const MOST_OF_ONE_PERCENT = 85;

/** The waits and changes that a release may summarise. */
export function summaryCandidates(people: People, context: JudgeContext): readonly SummaryCandidate[] {
  const waits = people.received.flatMap((course) => {
    const wait = course.waits.receipt.start;
    return wait?.kind === 'reached' ? [wait.days] : [];
  });
  const changes = RELEASED.flatMap(({ measure, table }): readonly SummaryCandidate[] => {
    if (!WHOLE_UNITS.includes(measure.unit)) return [];
    const values = people.discharged.flatMap((course) => judgedChange(course, context, measure.id) ?? []);
    return [
      {
        id: `mean-change.${measure.id}`,
        title: `${measure.name}: mean change from before to after the programme (${measure.betterWhen} is better)`,
        unit: measure.unit,
        kind: 'mean-change',
        values,
        tableId: table.id,
        of: CHANGED_CATEGORIES,
      },
    ];
  });
  return [
    {
      id: 'median-wait',
      title: 'Days from referral to start, of those who started: half waited no longer than',
      unit: 'days',
      kind: 'median-wait',
      values: waits,
      tableId: START.id,
      of: ['within-90', 'later'],
    },
    ...changes,
  ];
}

/**
 * A summary that may be printed; null where it may not.
 *
 * It needs enough people by the printed counts and in truth, all of whose groups are shown; no one person may make up most
 * of it; and no release of the same people, in whole or in part, may have printed it before, since the difference of two
 * sums is what the people between them had.
 *
 * @param earlier releases of the same team and financial year
 * @source Floor and overlap: Handbook on Statistical Disclosure Control, online 2nd edition, chapter 5, publication of mean
 *   values. Dominance: chapter 4, section 4.2, the (1,85) rule.
 */
export function clearedSummary(
  candidate: SummaryCandidate,
  release: IssuedRelease,
  earlier: readonly IssuedRelease[],
): ProtectedSummary | null {
  const { id, title, unit, kind, values } = candidate;
  const table = release.tables.find(({ tableId }) => tableId === candidate.tableId);
  const n = table === undefined ? null : printedCount(table, candidate.of, release);
  const { minimumForMeans } = release.policy;
  if (n === null || n < minimumForMeans || values.length < minimumForMeans) return null;
  if (kind === 'mean-change' && isDominated(values)) return null;
  if (earlier.some((other) => other.summaries.includes(id) && overlaps(other, release))) return null;
  const { mean, sd, median, lowerQuartile, upperQuartile } = summarise(values);
  const value = kind === 'mean-change' ? mean : median;
  if (value === null) return null;
  return {
    id,
    title,
    unit,
    n,
    kind,
    value: Math.round(value),
    sd: kind === 'mean-change' && sd !== null ? Math.round(sd) : null,
    quartiles:
      kind === 'median-wait' && lowerQuartile !== null && upperQuartile !== null
        ? { lower: Math.round(lowerQuartile), upper: Math.round(upperQuartile) }
        : null,
  } as ProtectedSummary;
}

/**
 * Whether one contribution makes up most of a sum.
 *
 * @example isDominated([300, 20, 10]) -> true: 300 is 91 % of 330
 */
export function isDominated(contributions: readonly number[]): boolean {
  const sizes = contributions.map(Math.abs);
  const total = sizes.reduce((a, b) => a + b, 0);
  return 100 * Math.max(0, ...sizes) > MOST_OF_ONE_PERCENT * total;
}

/** The printed count of some categories; null where they are not printed as such, or one is hidden. */
export function printedCount(
  table: IssuedTable,
  categories: readonly string[],
  { policy }: Pick<IssuedRelease, 'policy'>,
): number | null {
  const left = new Set(categories);
  const counts = [];
  const largestFirst = [...table.cells].sort((a, b) => b.of.length - a.of.length);
  for (const cell of largestFirst) {
    if (cell.of.length === 0 || !cell.of.every((category) => left.has(category))) continue;
    for (const category of cell.of) left.delete(category);
    counts.push(protectCount(countOf(table, cell), policy, table.hidden[cell.id] ?? null));
  }
  return left.size > 0 ? null : sumOfShown(counts);
}

/** Whether two releases of one commissioner and year tell of the same people. */
function overlaps(a: IssuedRelease, b: IssuedRelease): boolean {
  if (a.commissionerId !== b.commissionerId) return false;
  return a.period.kind === 'year' || b.period.kind === 'year' || a.period.label === b.period.label;
}
