import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { isShown, MEMBER_FILTERS } from '../../../src/domain/indicators/figure.js';
import { financialQuarter, parsePeriod } from '../../../src/domain/calendar/period.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import type { QuarterlyReportInput } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { quarterlyDocument } from '../../../src/reports/quarterly/document/build-document.js';
import { openFigure } from '../../../src/reports/quarterly/open-figure.js';
import type { OpenedFigure } from '../../../src/reports/quarterly/open-figure.js';
import { anyDay, anyStore } from '../../support/arbitrary-facts.js';
import { countsIn } from '../../support/counts-in-document.js';
import type { CountInDocument } from '../../support/counts-in-document.js';
import { reportInputOf } from '../../support/report-input.js';
import { wholeInput } from '../../support/whole-report.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

/** Opens the figures of a report, each once, by the period that a link is of. */
function opener(input: QuarterlyReportInput): (link: CountInDocument['link']) => OpenedFigure | null {
  const known = new Map<string, OpenedFigure | null>();
  return (link) => {
    if (link?.kind !== 'figure') return null;
    const { figureId, of } = link;
    const key = `${figureId} ${of?.period ?? ''} ${of?.asAt ?? ''}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const period = of === undefined ? input.period : parsePeriod(of.period);
    const asAt = of === undefined ? input.asAt : plainDate(of.asAt);
    const opened = period === null ? null : openFigure({ ...input, period, asAt }, figureId);
    known.set(key, opened);
    return opened;
  };
}

/** How many referrals a count opens to; null where it does not open. */
function opensTo({ head, link, rowLink }: CountInDocument, open: ReturnType<typeof opener>): number | null {
  const opened = open(link ?? rowLink);
  if (opened === null) return null;
  const { figure, members } = opened;
  if (head === 'People')
    return figure.people[link?.kind === 'figure' && link.members === 'counted' ? 'denominator' : 'numerator'];
  if (head === 'Left out')
    return members.filter(({ exclusion }) => exclusion !== null && !SAID_ELSEWHERE.includes(exclusion))
      .length;
  const asked = link?.kind === 'figure' ? link.members : BESIDE[head];
  const filter = MEMBER_FILTERS.find((each) => each === (asked ?? 'numerator'));
  if (filter === undefined || (link === null && asked === undefined)) return null;
  return members.filter(({ kind }) => isShown(filter, kind)).length;
}

/** Whom a table of groups does not count as left out: they are other rows, or stand with the cohorts. */
const SAID_ELSEWHERE = ['another-group', 'registered-in-error'];

/** Numbers beside one that opens: the page of its figure shows them too. */
const BESIDE: Readonly<Record<string, string>> = {
  of: 'counted',
  'of, then': 'counted',
  Open: 'open',
};

function expectEveryCountToOpen(input: QuarterlyReportInput, isAsked: (index: number) => boolean): number {
  const counts = countsIn(quarterlyDocument(buildQuarterlyReport(input)));
  const open = opener(input);
  const asked = counts.filter((_, index) => isAsked(index));
  const shown = asked.map((count) => [count.where, count.value, opensTo(count, open)] as const);
  expect(shown.filter(([, value, opened]) => value !== opened)).toEqual([]);
  return asked.length;
}

describe('every number that counts somebody', () => {
  it('opens to so many referrals, in the whole report of the worked quarter', () => {
    expect(expectEveryCountToOpen(wholeInput(WORKED_INPUT), () => true)).toBeGreaterThan(1500);
  });

  it('and of any quarter', () => {
    const anyInput = fc
      .tuple(anyStore, anyDay)
      .map(([facts, asAt]) => reportInputOf(facts, financialQuarter(2026, 1), asAt));
    fc.assert(
      fc.property(anyInput, fc.nat(10), (input, offset) => {
        expectEveryCountToOpen(wholeInput(input), (index) => (index + offset) % 11 === 0);
      }),
      { numRuns: 12 },
    );
  });
});
