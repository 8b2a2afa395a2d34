import { jStat } from 'jstat';
import type { Response } from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { QuarterlyReport } from '../../../src/reports/quarterly/report-model.js';
import type { SiteComparison } from '../../../src/reports/quarterly/section-models.js';
import { createAccount, createTeam } from '../../../src/usecases/accounts/provision.js';
import { anAssessment, aPatient, aReferralBody } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { rowsOfCsv } from '../../support/export-file.js';
import { pagesWith } from '../../support/page-client.js';
import { tablesInPdf } from '../../support/read-pdf-tables.js';
import { tablesInPage, tablesInSheets } from '../../support/read-tables.js';
import type { ReadTable } from '../../support/read-tables.js';
import { reportOf } from '../../support/report.js';
import { asRecord, textAt } from '../../support/response.js';
import { sessionSecretOf } from '../../support/signed-in.js';
import { clientOf, startApp } from '../../support/start-app.js';
import type { TestApp, TestClient } from '../../support/start-app.js';

/** An invented site: how many were referred to it, and how many of them came to an assessment; the others declined. */
type Site = readonly [name: string, referred: number, assessed: number];

/** 77 of 110 were assessed: 70 %. */
const FIVE: readonly Site[] = [
  ['Dune Hall', 30, 9],
  ['Gorse Rooms', 30, 30],
  ['Lagoon House', 30, 24],
  ['Pebble Hall', 14, 14],
  ['Saltmarsh Centre', 6, 0],
];
const FOUR: readonly Site[] = [
  ['Dune Hall', 6, 5],
  ['Gorse Rooms', 6, 2],
  ['Lagoon House', 4, 4],
  ['Pebble Hall', 4, 1],
];
const QUARTER = 'period=2026-27-Q1';
const FIGURE = 'assessed-of-referred';

interface Team {
  readonly comparison: SiteComparison;
  /** The table of the figure by site, in each form. */
  readonly tables: Readonly<Record<'page' | 'PDF' | 'spreadsheet', ReadTable>>;
  readonly csv: ReturnType<typeof rowsOfCsv>;
  readonly page: string;
}

let service: TestApp;
let five: Team;
let four: Team;
beforeAll(async () => {
  service = await startApp();
  five = await givenTeam('Samphire Head PR team', FIVE);
  four = await givenTeam('Sandpiper PR team', FOUR);
});
afterAll(() => service.close());

describe('a team of four sites', () => {
  it('has them side by side in the order of their names with Wilson intervals, without limits, place or rank', () => {
    expect(four.comparison.kind).toBe('intervals');
    expect(four.comparison.sites.map(({ name }) => name)).toEqual(FOUR.map(([name]) => name));
    four.comparison.sites.forEach(({ figure, limits, place }, index) => {
      const [, referred, assessed] = FOUR[index] ?? ['', 0, 0];
      expect([figure.numerator, figure.denominator, limits, place]).toEqual([assessed, referred, null, null]);
      const wilson = wilsonOf(assessed, referred);
      expect(figure.interval?.low).toBeCloseTo(100 * wilson.low, 9);
      expect(figure.interval?.high).toBeCloseTo(100 * wilson.high, 9);
    });
  });

  it.each(['page', 'PDF', 'spreadsheet'] as const)('shows the same in the %s', (form) => {
    const { heads, rows } = four.tables[form];
    expect(heads.join(' ')).not.toMatch(/limits|place|rank|league/i);
    expect(rows.map(([name]) => name)).toEqual([...FOUR.map(([name]) => name), 'All sites']);
    FOUR.forEach(([, referred, assessed], index) => {
      expect(rows[index]?.slice(1, 3)).toEqual([String(assessed), String(referred)]);
    });
  });

  it('has one row a site in the CSV, and no limits', () => {
    expect(four.csv.map(({ group, statistic }) => [group, statistic])).toEqual(
      FOUR.map(([name]) => [name, 'share']),
    );
  });
});

describe('a team of five sites', () => {
  it('has the limits of a funnel about all sites together, by another way of working them out', () => {
    expect(five.comparison.kind).toBe('funnel');
    expect([five.comparison.whole.numerator, five.comparison.whole.denominator]).toEqual([77, 110]);
    five.comparison.sites.forEach(({ figure, limits }) => {
      const { inner, outer } = limitsOf(0.7, figure.denominator);
      expect(limits?.inner.low).toBeCloseTo(100 * inner.low, 6);
      expect(limits?.inner.high).toBeCloseTo(100 * inner.high, 6);
      expect(limits?.outer.low).toBeCloseTo(100 * outer.low, 6);
      expect(limits?.outer.high).toBeCloseTo(100 * outer.high, 6);
    });
  });

  it('says which of 30 or more lie outside, in the order of their names', () => {
    // About 70 %, 9 of 30 or fewer come in 1 of 100,000 cases, 30 of 30 in 2 of them, and 24 of 30 or more in 16 of 100.
    expect(five.comparison.sites.map(({ name, place }) => [name, place])).toEqual([
      ['Dune Hall', 'beyond-outer'],
      ['Gorse Rooms', 'beyond-outer'],
      ['Lagoon House', 'within'],
      ['Pebble Hall', 'too-few'],
      ['Saltmarsh Centre', 'too-few'],
    ]);
  });

  it.each(['page', 'PDF'] as const)('shows the same in the %s', (form) => {
    const { heads, rows } = five.tables[form];
    const at = (head: string): number => heads.indexOf(head);
    expect(rows.map(([name]) => name)).toEqual([...FIVE.map(([name]) => name), 'All sites']);
    FIVE.forEach(([, referred, assessed], index) => {
      const row = rows[index] ?? [];
      const { inner, outer } = limitsOf(0.7, referred);
      expect([row[1], row[2]]).toEqual([String(assessed), String(referred)]);
      expect(row[at('95 % limits')]).toBe(`${oneDecimal(inner.low)} to ${oneDecimal(inner.high)}`);
      expect(row[at('99.8 % limits')]).toBe(`${oneDecimal(outer.low)} to ${oneDecimal(outer.high)}`);
    });
    expect(rows[0]?.[at('Place')]).toBe('beyond the 99.8 % limits');
    expect(rows[2]?.[at('Place')]).toBe('within chance');
    expect(rows[3]?.[at('Place')]).toBe('too few to say (fewer than 30)');
  });

  it('shows the same in the spreadsheet, unrounded', () => {
    const { heads, rows } = five.tables.spreadsheet;
    const from = heads.findIndex((head) => head.startsWith('95 % limits'));
    FIVE.forEach(([name, referred], index) => {
      const { inner, outer } = limitsOf(0.7, referred);
      const [low, high, outerLow, outerHigh] = rows[index]?.slice(from, from + 4).map(Number) ?? [];
      expect(rows[index]?.[0]).toBe(name);
      expect(low).toBeCloseTo(100 * inner.low, 6);
      expect(high).toBeCloseTo(100 * inner.high, 6);
      expect(outerLow).toBeCloseTo(100 * outer.low, 6);
      expect(outerHigh).toBeCloseTo(100 * outer.high, 6);
    });
  });

  it('has the share and both limits of each site in the CSV, unrounded', () => {
    expect(five.csv).toHaveLength(3 * FIVE.length);
    for (const [name, referred] of FIVE) {
      const { inner, outer } = limitsOf(0.7, referred);
      const row = (statistic: string) =>
        five.csv.find((each) => each['group'] === name && each['statistic'] === statistic);
      for (const [words, { low, high }] of [
        ['95 % limits of the funnel', inner],
        ['99.8 % limits of the funnel', outer],
      ] as const) {
        expect(Number(row(words)?.['low'])).toBeCloseTo(100 * low, 6);
        expect(Number(row(words)?.['high'])).toBeCloseTo(100 * high, 6);
      }
    }
  });

  it('is drawn as a funnel, and as intervals where four sites have somebody', () => {
    expect(five.page).toContain('99.8 %');
    expect(four.page).not.toContain('99.8 %');
  });
});

/**
 * Exact binomial limits by the cumulative distribution of another library: r is the least count whose cumulative
 * probability exceeds p, and the limit (r - (P(R <= r) - p) / P(R = r)) / n.
 *
 * Source: Spiegelhalter DJ 2005, Statist Med 24:1185-1202, appendix.
 */
function limitsOf(target: number, n: number): { inner: Ends; outer: Ends } {
  const limitAt = (p: number): number => {
    const upTo = (count: number): number => (count < 0 ? 0 : jStat.binomial.cdf(count, n, target));
    let r = 0;
    while (upTo(r) <= p) r += 1;
    return (r - (upTo(r) - p) / (upTo(r) - upTo(r - 1))) / n;
  };
  return {
    inner: { low: limitAt(0.025), high: limitAt(0.975) },
    outer: { low: limitAt(0.001), high: limitAt(0.999) },
  };
}

interface Ends {
  readonly low: number;
  readonly high: number;
}

/** Wilson EB 1927, J Am Stat Assoc 22:209-212. */
function wilsonOf(count: number, n: number): Ends {
  const z = 1.959963984540054;
  const share = count / n;
  const middle = (share + z ** 2 / (2 * n)) / (1 + z ** 2 / n);
  const half = (z / (1 + z ** 2 / n)) * Math.sqrt((share * (1 - share)) / n + z ** 2 / (4 * n ** 2));
  return { low: middle - half, high: middle + half };
}

function oneDecimal(share: number): string {
  return (100 * share).toFixed(1);
}

async function givenTeam(name: string, sites: readonly Site[]): Promise<Team> {
  const { context } = service.record;
  const siteNames = sites.map(([siteName]) => siteName);
  const { teamId, siteIds } = await createTeam(context, { name, kind: 'demo', siteNames });
  const account = await createAccount(context, {
    displayName: 'Test lead',
    belonging: { role: 'lead', teamId },
    tokenName: 'tests',
    expiresAt: '2100-01-01T00:00:00.000Z',
  });
  const lead = clientOf(service.app, account.token);
  for (const [siteName, referred, assessed] of sites) {
    const siteId = siteIds[siteName] ?? '';
    for (let person = 0; person < referred; person += 1) await givenPerson(lead, siteId, person < assessed);
  }
  const pages = pagesWith(service, await sessionSecretOf(service, account.accountId));
  return shownTo(lead, (await pages.get(`/report/chapters/sites?${QUARTER}`)).text);
}

async function shownTo(lead: TestClient, page: string): Promise<Team> {
  const report = (await reportOf(lead, QUARTER)) as unknown as QuarterlyReport;
  const comparison = report.sites.find(({ figureId }) => figureId === FIGURE);
  if (comparison === undefined) throw new Error('The sites are not compared.');
  const fileOf = async (form: string): Promise<Buffer> => {
    const response = await lead
      .get(`/api/v1/reports/quarterly.${form}?${QUARTER}`)
      .buffer(true)
      .parse(readBytes);
    return response.body as Buffer;
  };
  const tableIn = (tables: readonly ReadTable[]): ReadTable => {
    const found = tables.find(({ caption }) => caption.startsWith(`${comparison.title}, by site`));
    if (found === undefined) throw new Error('There is no table of the sites.');
    return found;
  };
  const csv = rowsOfCsv((await fileOf('csv')).toString('utf8'));
  return {
    comparison,
    page,
    csv: csv.filter(({ section, figureId }) => section === 'sites' && (figureId ?? '').startsWith(FIGURE)),
    tables: {
      page: tableIn(tablesInPage(page)),
      PDF: tableIn(await tablesInPdf(await fileOf('pdf'))),
      spreadsheet: tableIn(await tablesInSheets(await fileOf('xlsx'))),
    },
  };
}

function readBytes(response: Response, done: (error: Error | null, body: Buffer) => void): void {
  const chunks: Buffer[] = [];
  const stream = response as unknown as NodeJS.ReadableStream;
  stream.on('data', (chunk: Buffer) => chunks.push(chunk));
  stream.on('end', () => done(null, Buffer.concat(chunks)));
}

async function givenPerson(lead: TestClient, siteId: string, isAssessed: boolean): Promise<void> {
  const made = async (path: string, body: Body, ifMatch?: string): Promise<string> => {
    const response = await lead.post(`/api/v1${path}`, body, ifMatch);
    if (response.status !== 201) throw new Error(`${path}: ${response.text}`);
    return textAt(asRecord(response.body), 'id');
  };
  const patientId = await made(
    '/patients',
    aPatient({ nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced' }),
  );
  const referralId = await made('/referrals', aReferralBody(patientId, siteId));
  const at = `/referrals/${referralId}`;
  if (isAssessed) await made(`${at}/assessments`, anAssessment(siteId));
  else await made(`${at}/closure`, { closedOn: '2026-04-20', reason: 'declined' }, '"1"');
}
