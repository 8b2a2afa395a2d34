import { checkAssessment } from '../src/domain/assessment/check-assessment.js';
import { resultsOf } from '../src/domain/assessment/results.js';
import type { LocatedResult } from '../src/domain/assessment/results.js';
import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import type { Fraction } from '../src/domain/exact/fraction.js';
import type { PlannedAssessment, PlannedEntry } from './plan.js';

/** What is known when an assessment is entered. */
export interface EntryContext {
  readonly bornOn: PlainDate;
  readonly receivedOn: PlainDate;
  readonly baseline: PlannedAssessment | null;
}

/**
 * Brings an entry through the checks that the service makes, as an assessor would: what the service asks to be checked
 * is confirmed.
 *
 * @returns the entry with its confirmations, and its results
 * @throws Error naming the faults when the service would refuse the entry: the plan is wrong then
 */
export function settle(
  entry: PlannedEntry,
  context: EntryContext,
): { readonly entry: PlannedEntry; readonly results: readonly LocatedResult[] } {
  const { baseline } = context;
  const course = {
    today: entry.assessedOn,
    bornOn: context.bornOn,
    receivedOn: context.receivedOn,
    closedOn: null,
    others: baseline === null ? [] : [baseline.entry],
    baseline: new Map<string, Fraction>(
      baseline?.results.map((result) => [result.measureId, result.value] as const),
    ),
  };
  const full = { ...entry, siteId: 'not yet known' };
  const first = checkAssessment(full, course);
  const confirmed = first.kind === 'unconfirmed' ? first.queries.map((query) => query.pointer) : [];
  const verdict = first.kind === 'unconfirmed' ? checkAssessment({ ...full, confirmed }, course) : first;
  switch (verdict.kind) {
    case 'accepted':
      return { entry: { ...entry, confirmed }, results: resultsOf(verdict.checked) };
    case 'faulty':
      throw new Error(`The planned assessment has faults: ${named(verdict.faults)}.`);
    case 'unconfirmed':
      throw new Error(`The planned assessment stays unconfirmed: ${named(verdict.queries)}.`);
  }
}

function named(faults: readonly { readonly pointer: string; readonly code: string }[]): string {
  return faults.map(({ pointer, code }) => `${pointer} ${code}`).join(', ');
}
