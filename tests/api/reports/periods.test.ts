import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { reportOf } from '../../support/report.js';
import { expectProblem } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

/** Today is 25 November 2026, in the third quarter of the financial year. */
describe('the period of a report', () => {
  let service: TestApp;
  beforeAll(async () => {
    service = await startApp();
  });
  afterAll(() => service.close());

  it.each([
    ['2026-27-Q1', 'quarter', '2026-04-01', '2026-06-30'],
    ['2025-26-Q2', 'quarter', '2025-07-01', '2025-09-30'],
    ['2025-26-Q3', 'quarter', '2025-10-01', '2025-12-31'],
    // January to March belong to the year that began in April before; 2024 was a leap year.
    ['2023-24-Q4', 'quarter', '2024-01-01', '2024-03-31'],
    ['2025-26', 'year', '2025-04-01', '2026-03-31'],
    ['1999-00', 'year', '1999-04-01', '2000-03-31'],
    ['2024-02-29..2024-03-01', 'dates', '2024-02-29', '2024-03-01'],
    ['2026-11-25..2026-11-25', 'dates', '2026-11-25', '2026-11-25'],
  ])('%s is a %s', async (label, kind, firstDay, lastDay) => {
    const report = await reportOf(service.as('lead'), `period=${label}`);
    expect(report).toMatchObject({ period: { kind, label, firstDay, lastDay }, asAt: '2026-11-25' });
  });

  it.each([
    ['2026-27-Q2', '', true],
    ['2026-27-Q3', '', false],
    // The last day itself is seen in full.
    ['2026-27-Q1', '&asAt=2026-06-30', true],
    ['2026-27-Q1', '&asAt=2026-06-29', false],
  ])('%s%s is over: %s', async (label, asAt, isPeriodOver) => {
    const report = await reportOf(service.as('lead'), `period=${label}${asAt}`);
    expect(report).toMatchObject({ provisional: { isPeriodOver, isProvisional: !isPeriodOver } });
  });

  it.each([
    '2026-27-Q5',
    '2026-27-Q0',
    '2026-27-q1',
    '2026-28-Q1',
    '2026-27-',
    '2026-2027',
    '2026',
    '26-27',
    '2026-04-01',
    '2026-04-01..',
    '..2026-04-01',
    '2026-04-31..2026-05-02',
    '2026-05-02..2026-05-01',
    '2026-04-01..2026-05-01..2026-06-01',
    '%202026-27',
    '',
  ])('"%s" is none', async (label) => {
    for (const form of ['quarterly', 'quarterly.txt']) {
      expectProblem(await service.as('lead').get(`/api/v1/reports/${form}?period=${label}`), {
        status: 422,
        type: 'rules-broken',
        pointers: ['period'],
        codes: ['not-a-period'],
      });
    }
  });

  it.each([
    ['a cut tomorrow', 'period=2026-27-Q1&asAt=2026-11-26', ['asAt'], ['in-the-future']],
    ['a period that begins tomorrow', 'period=2026-11-26..2026-11-30', ['period'], ['in-the-future']],
    [
      'a period that begins after the cut',
      'period=2026-27-Q1&asAt=2026-03-31',
      ['period'],
      ['in-the-future'],
    ],
    ['both at once', 'period=nothing&asAt=2027-01-01', ['period', 'asAt'], ['not-a-period', 'in-the-future']],
  ])('refuses %s', async (_name, query, pointers, codes) => {
    expectProblem(await service.as('lead').get(`/api/v1/reports/quarterly?${query}`), {
      status: 422,
      type: 'rules-broken',
      pointers,
      codes,
    });
  });

  it.each([
    ['no period', '', ['period']],
    ['two periods', 'period=2026-27-Q1&period=2026-27-Q2', ['period']],
    ['a cut that is no date', 'period=2026-27-Q1&asAt=2026-02-30', ['asAt']],
    ['a parameter that there is not', 'period=2026-27-Q1&as_at=2026-05-01', ['as_at']],
    ['a period of great length', `period=${'2'.repeat(41)}`, ['period']],
  ])('refuses %s by its shape', async (_name, query, pointers) => {
    expectProblem(await service.as('lead').get(`/api/v1/reports/quarterly?${query}`), {
      status: 400,
      type: 'malformed-request',
      pointers,
    });
  });
});
