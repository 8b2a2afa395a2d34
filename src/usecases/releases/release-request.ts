import { parsePeriod } from '../../domain/calendar/period.js';
import type { Period } from '../../domain/calendar/period.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Fault, Outcome } from '../../domain/refusal/refusal.js';
import { codeListsOf } from '../../domain/release/exposure.js';
import type { ReleaseEntry } from '../../domain/release/kept-release.js';
import type { ReleaseMode } from '../../domain/release/policy.js';
import { LEFT_OUT } from '../../domain/release/settle.js';
import type { TableChoices } from '../../domain/release/settle.js';

/** What a lead asks to be released. */
export interface ReleaseRequest {
  readonly commissionerId: string;
  /** A financial quarter or year. */
  readonly period: string;
  /** The data cut; today where it is left out. */
  readonly asAt?: PlainDate | undefined;
  readonly mode: ReleaseMode;
  /** The agreement that names the recipient; asked for by an exact release. */
  readonly agreement?: string | undefined;
  /** Code list by table, or `left-out`; a table that is not named has its first, or of few people its list for few. */
  readonly tables: TableChoices;
  /** Whether what the attack proposes is taken up at once. */
  readonly mergeAsProposed: boolean;
  readonly corrects?: { readonly number: number; readonly reason: string } | undefined;
}

/** A request that may be counted. */
export interface CheckedRequest {
  readonly request: ReleaseRequest;
  readonly period: Period & { readonly kind: 'quarter' | 'year' };
  readonly financialYear: string;
  readonly asAt: PlainDate;
}

/** Checks what can be checked before anything is counted. */
export function checkRequest(
  request: ReleaseRequest,
  today: PlainDate,
  commissionerIds: readonly string[],
): Outcome<CheckedRequest> {
  const faults: Fault[] = [];
  const fault = (pointer: string, code: string, message: string): void => {
    faults.push({ pointer, code, message });
  };
  const period = parsePeriod(request.period);
  const asAt = request.asAt ?? today;
  if (period === null || period.kind === 'dates') {
    fault(
      '/period',
      'not-a-period',
      'Give a financial quarter as 2026-27-Q1 or a financial year as 2026-27: releases are of no other period.',
    );
  } else if (asAt < period.lastDay) {
    fault('/period', 'not-over', `The period ends on ${period.lastDay}: it must be over at the data cut.`);
  }
  if (asAt > today) fault('/asAt', 'in-the-future', 'The data cut cannot be in the future.');
  if (!commissionerIds.includes(request.commissionerId)) {
    fault('/commissionerId', 'unknown-commissioner', 'The team has no such commissioner.');
  }
  if (request.mode === 'exact' && (request.agreement ?? '') === '') {
    fault('/agreement', 'missing', 'An exact release needs the agreement that names its recipient.');
  }
  for (const [tableId, listId] of Object.entries(request.tables)) {
    const lists = codeListsOf(tableId).map(({ id }) => id);
    if (lists.length === 0) fault(`/tables/${tableId}`, 'unknown-table', 'There is no table of this id.');
    else if (listId !== LEFT_OUT && !lists.includes(listId)) {
      fault(`/tables/${tableId}`, 'unknown-code-list', `Give one of: ${[...lists, LEFT_OUT].join(', ')}.`);
    }
  }
  if (faults.length > 0 || period === null || period.kind === 'dates') {
    return refused({ code: 'rules-broken', faults });
  }
  const { kind } = period;
  const financialYear = period.label.slice(0, 7);
  return done({ request, period: { ...period, kind }, financialYear, asAt });
}

/** Whether a release of this period may be made beside those there are. */
export function checkAgainst(
  { request, period }: CheckedRequest,
  releases: readonly ReleaseEntry[],
): Outcome<null> {
  const { commissionerId, corrects } = request;
  const same = releases.filter(
    (release) => release.commissionerId === commissionerId && release.period === period.label,
  );
  if (corrects === undefined) {
    const standing = same.find(({ correctedBy, withdrawn }) => correctedBy === null && withdrawn === null);
    return standing === undefined
      ? done(null)
      : refused({ code: 'release-exists', existingNumber: standing.number });
  }
  const former = same.find(({ number }) => number === corrects.number);
  if (former === undefined) return refused({ code: 'not-found', what: 'release' });
  if (former.correctedBy !== null) return refused({ code: 'release-closed', why: 'corrected' });
  return done(null);
}
