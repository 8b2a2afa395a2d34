import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { MakerThreads } from '../../src/app/maker-threads.js';
import { financialQuarter } from '../../src/domain/calendar/period.js';
import { plainDate } from '../../src/domain/calendar/plain-date.js';
import type { QuarterlyReport } from '../../src/reports/quarterly/report-model.js';
import { makeRelease } from '../../src/usecases/releases/make-release.js';
import { readReleaseFile } from '../../src/usecases/releases/read-releases.js';
import { REPORT_FORMS } from '../../src/usecases/reports/report-maker.js';
import type { ReleaseRequest } from '../../src/usecases/releases/release-request.js';
import type { TeamReportRequest } from '../../src/usecases/reports/report-maker.js';
import { REPORT_PARTS } from '../../src/usecases/reports/report-request.js';
import { demoRecord } from '../support/demo-record.js';
import type { DemoRecord } from '../support/demo-record.js';
import { need } from '../../seeds/perform.js';
import { tablesInSheets } from '../support/read-tables.js';

const TODAY = '2026-11-25';

/** A release of a quarter that is over, merged as proposed: one of few people passes at once. */
function releaseRequest({ demo }: DemoRecord): ReleaseRequest {
  const commissionerId = demo.commissioners[0]?.commissionerId ?? '';
  const asAt = plainDate('2026-05-15');
  return { commissionerId, period: '2025-26-Q4', asAt, mode: 'rounded', tables: {}, mergeAsProposed: true };
}

/** What a file says; the bytes of two of the forms hold when they were made. */
async function said(form: (typeof REPORT_FORMS)[number], bytes: Uint8Array): Promise<unknown> {
  const file = Buffer.from(bytes);
  // To read all its sheets takes long; the days on which they were made are as long as each other.
  if (form === 'pdf') return { begins: file.toString('latin1', 0, 5), lengthBytes: file.length };
  if (form === 'xlsx') return tablesInSheets(file);
  return file.toString('utf8');
}

describe('what is made in threads of their own', () => {
  let demo: DemoRecord;
  let threads: MakerThreads;
  let request: TeamReportRequest;
  beforeAll(async () => {
    demo = await demoRecord(TODAY, 11, 0.1);
    const compiled = pathToFileURL(join(inject('programBundle'), 'maker-threads.js'));
    const { startMakerThreads } = (await import(compiled.href)) as {
      readonly startMakerThreads: (file: string) => MakerThreads;
    };
    threads = startMakerThreads(demo.file);
    const asAt = plainDate(TODAY);
    request = {
      teamId: demo.lead.teamId,
      period: financialQuarter(2026, 1),
      asAt,
      include: REPORT_PARTS,
    };
  });
  afterAll(async () => {
    await threads.close();
    await demo.close();
  });

  it.each(REPORT_FORMS)('say the same as made in the thread that asks: %s', async (form) => {
    // A PDF draws every chart, which takes long; the other forms hold their numbers.
    const asked = form === 'pdf' ? { ...request, include: [] } : request;
    const here = await said(form, await demo.record.context.reports.file(asked, form));
    expect(await said(form, await threads.file(asked, form))).toEqual(here);
  });

  it('reach whoever shows them as they were made', async () => {
    const here = await demo.record.context.reports.report(request);
    expect(here.cohorts.referral.referrals).toBeGreaterThan(5);
    expect(await threads.report(request)).toStrictEqual(here);
  });

  it('open at each figure', async () => {
    const here = await demo.record.context.reports.figure(request, 'uptake');
    expect(here?.members.length).toBeGreaterThan(5);
    expect(await threads.figure(request, 'uptake')).toStrictEqual(here);
    expect(await threads.figure(request, 'no-such-figure')).toBeNull();
  });

  it('are refused as they are in the thread that asks, and the next is made', async () => {
    const ofNobody = { ...request, teamId: 'no-such-team' };
    const here = await demo.record.context.reports.report(ofNobody).catch((error: unknown) => error);
    if (!(here instanceof Error)) throw new Error('There is a report of a team that is not there.');
    await expect(threads.report(ofNobody)).rejects.toThrow(here.message);
    expect((await threads.report(request)).period).toEqual(request.period);
  });

  it('a release is drafted as in the thread that asks, or refused', async () => {
    const { context } = demo.record;
    const asked = { teamId: demo.lead.teamId, today: plainDate(TODAY), request: releaseRequest(demo) };
    const here = await context.releases.draft(asked);
    expect(here.kind).toBe('done');
    expect(await threads.draft(asked)).toStrictEqual(here);
    const notOver = { ...asked, today: plainDate('2026-05-01') };
    const refusal = await context.releases.draft(notOver);
    expect(refusal.kind).toBe('refused');
    expect(await threads.draft(notOver)).toStrictEqual(refusal);
  });

  it('a release is kept in the forms that the thread that asks writes of it', async () => {
    const { context } = demo.record;
    const request = releaseRequest(demo);
    const asked = { teamId: demo.lead.teamId, today: plainDate(TODAY), request };
    const draft = need('draft', await context.releases.draft(asked));
    const here = await context.releases.forms(draft.release);
    const made = await makeRelease({ ...context, releases: threads }, demo.lead, request);
    expect(made).toMatchObject({ kind: 'done', value: { number: draft.release.number } });
    for (const form of ['csv', 'fhir', 'pdf', 'xlsx'] as const) {
      const kept = need(form, await readReleaseFile(context, demo.lead, draft.release.number, form)).content;
      const sheets = form === 'xlsx';
      expect(sheets ? await tablesInSheets(kept) : kept, form).toEqual(
        sheets ? await tablesInSheets(Buffer.from(here[form])) : here[form],
      );
    }
  });

  it('see what was written before they were asked for, and nothing that is written meanwhile', async () => {
    const { context } = demo.record;
    const one = await context.db
      .selectFrom('referral')
      .selectAll()
      .where('team_id', '=', request.teamId)
      .where('received_on', '>=', request.period.firstDay)
      .where('received_on', '<=', request.period.lastDay)
      .where('entered_in_error_at', 'is', null)
      .limit(1)
      .executeTakeFirstOrThrow();
    const writeInError = (id: string) =>
      context.db
        .insertInto('referral')
        .values({
          ...one,
          id,
          entered_in_error_at: `${TODAY}T10:00:00.000Z`,
          entered_in_error_by: demo.lead.accountId,
          entered_in_error_reason: 'written twice',
        })
        .execute();
    const inError = async (report: Promise<QuarterlyReport>) =>
      (await report).dataQuality.entriesInError.referrals;
    const before = await inError(threads.report(request));
    await writeInError('written-before');
    expect(await inError(threads.report(request))).toBe(before + 1);
    // In the thread that asks, where it is certain that the writing comes in between: of all that a report with its trend
    // reads, entries in error are the last.
    const making = context.reports.report(request);
    await setImmediate();
    await writeInError('written-meanwhile');
    expect(await inError(making)).toBe(before + 1);
    expect(await inError(threads.report(request))).toBe(before + 2);
  });
});
