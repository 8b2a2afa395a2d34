import type { IssuedRelease } from '../../src/domain/release/issued.js';
import { countOf } from '../../src/domain/release/issued.js';
import { hideIn } from '../../src/domain/release/hiding/hide.js';
import { attackLedger, ledgerOf } from '../../src/domain/release/ledger/ledger.js';
import { DEFAULT_DISCLOSURE, policyOf } from '../../src/domain/release/policy.js';
import type { ReleaseMode } from '../../src/domain/release/policy.js';
import { precisionOf } from '../../src/domain/release/precision.js';
import { randomFrom, randomQuarter } from '../support/random-service.js';
import { releaseOf } from '../support/rendered-release.js';
import type { Line } from './table.js';

const SERVICES = 12;
const YEARLY = [100, 400, 1500] as const;
const GOAL_MS = 5000;

/** What a release still tells, beside hiding every table that has a small count; and how long the attack takes. */
export async function measureReleases(): Promise<readonly Line[]> {
  return [
    ...YEARLY.flatMap((received) =>
      (['rounded', 'exact'] as const).map((mode) => utilityLine(received, mode)),
    ),
    largeTableLine(),
    ledgerLine(),
  ];
}

function utilityLine(received: number, mode: ReleaseMode): Line {
  let [cells, hidden, ofBaseline, error, percentages, leftOut, kept] = [0, 0, 0, 0, 0, 0, 0];
  for (let seed = 1; seed <= SERVICES; seed += 1) {
    const quarter = randomQuarter(randomFrom(seed), Math.round(received / 4));
    const period = { label: '2026-27-Q1', kind: 'quarter' } as const;
    const { issued, release } = releaseOf([quarter], { number: 1, mode, period }, []);
    const lost = precisionOf(issued, release);
    cells += lost.cells;
    hidden += lost.hiddenCells;
    for (const table of issued.tables) {
      const hasSmall = Object.values(table.hidden).includes('small');
      if (hasSmall) ofBaseline += table.cells.length;
    }
    for (const { countedPercent, printedPercent } of lost.shares) {
      percentages += 1;
      if (printedPercent === null) leftOut += 1;
      else {
        error += Math.abs(printedPercent - countedPercent);
        kept += 1;
      }
    }
  }
  const share = (count: number): string => `${((100 * count) / cells).toFixed(0)} % hidden`;
  const meanError = kept === 0 ? 'none printed' : `${(error / kept).toFixed(1)} points off`;
  return {
    name: `release, ${mode}, ${received} referrals a year`,
    value: `${share(hidden)}; percentages ${meanError}, ${leftOut} of ${percentages} left out`,
    baseline: share(ofBaseline),
    ratio: ofBaseline === 0 ? '-' : (hidden / ofBaseline).toFixed(2),
    goal: 'hides less than the baseline',
    isMet: hidden < ofBaseline || ofBaseline === 0,
    howMeasured: `first quarters of ${SERVICES} invented services, groups merged as the attack proposes; baseline: every table with a small count hidden as a whole; error: mean absolute, of printed percentages against those counted.`,
  };
}

function largeTableLine(): Line {
  const random = randomFrom(10);
  const names = Array.from({ length: 10 }, (_, index) => index);
  const counts = Object.fromEntries(
    names.flatMap((row) => names.map((column) => [`r${row}|c${column}`, Math.floor(8 * random())] as const)),
  );
  const cell = (row: number | null, column: number | null) => ({
    id: `${row === null ? 'all' : `r${row}`}|${column === null ? 'all' : `c${column}`}`,
    words: '',
    of: names.flatMap((r) =>
      names.flatMap((c) =>
        (row === null || row === r) && (column === null || column === c) ? [`r${r}|c${c}`] : [],
      ),
    ),
    within: null,
    role:
      row === null ? ('column-total' as const) : column === null ? ('row-total' as const) : ('cell' as const),
    row: row === null ? null : `r${row}`,
    column: column === null ? null : `c${column}`,
  });
  const table = {
    tableId: 'completion-by-deprivation',
    universe: 'started' as const,
    codeListId: 'fine',
    counts,
    columnsOf: null,
    cells: [
      ...names.flatMap((r) => [...names.map((c) => cell(r, c)), cell(r, null)]),
      ...names.map((c) => cell(null, c)),
    ],
  };
  const policy = policyOf(DEFAULT_DISCLOSURE, 'exact');
  const hidden = hideIn({ ...table, columnsOf: 'completion' }, policy);
  const total = table.cells
    .filter(({ role }) => role === 'cell')
    .reduce((sum, each) => sum + countOf(table, each), 0);
  const release: IssuedRelease = {
    ref: '1',
    commissionerId: 'commissioner-1',
    period: { label: '2026-27', kind: 'year' },
    policy,
    corrects: null,
    totals: [{ universe: 'started', count: total, hidden: null }],
    tables: [hidden],
    summaries: [],
  };
  const began = performance.now();
  const result = attackLedger(ledgerOf([release]));
  return timeLine('attack on a table of 10 x 10', performance.now() - began, foundOf(result));
}

function ledgerLine(): Line {
  const random = randomFrom(4);
  const quarters = [1, 2, 3, 4].map(() => randomQuarter(random, 100));
  const releases: IssuedRelease[] = [];
  quarters.forEach((quarter, index) => {
    const period = { label: `2026-27-Q${index + 1}`, kind: 'quarter' } as const;
    releases.push(releaseOf([quarter], { number: index + 1, mode: 'rounded', period }, releases).issued);
  });
  const year = { number: 5, mode: 'rounded', period: { label: '2026-27', kind: 'year' } } as const;
  releases.push(releaseOf(quarters, year, releases).issued);
  const began = performance.now();
  const result = attackLedger(ledgerOf(releases));
  return timeLine("attack on a year's ledger", performance.now() - began, foundOf(result));
}

function foundOf(result: ReturnType<typeof attackLedger>): string {
  if (result.kind !== 'attacked') throw new Error(`The attack came to no end: ${result.kind}.`);
  return `${result.found.length} counts and differences attacked, ${result.found.filter(({ isSafe }) => !isSafe).length} found out`;
}

function timeLine(name: string, ms: number, found: string): Line {
  return {
    name,
    value: `${ms.toFixed(0)} ms`,
    baseline: '-',
    ratio: '-',
    goal: `below ${GOAL_MS} ms`,
    isMet: ms < GOAL_MS,
    howMeasured: `one run, ${found}.`,
  };
}
