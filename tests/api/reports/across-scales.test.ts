import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { QuarterlyReport } from '../../../src/reports/quarterly/report-model.js';
import type { Body } from '../../support/entries.js';
import { exported } from '../../support/export-file.js';
import { tablesInPdf } from '../../support/read-pdf-tables.js';
import { tablesInPage, tablesInSheets } from '../../support/read-tables.js';
import type { ReadTable } from '../../support/read-tables.js';
import { pagesAs } from '../../support/page-client.js';
import { reportOf } from '../../support/report.js';
import { outcomesOf, said } from '../../support/reported.js';
import { asRecord, asRecords, itemsOf } from '../../support/response.js';
import { givenAssessment, givenReferral, givenSession } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

/*
 * Two people who started on 5 May 2026 and were assessed at discharge on 1 July: one by the MRC scale at both ends, from 4
 * to 3, and one from MRC 4 to mMRC 2, which is MRC 3 (mMRC = MRC - 1, Yorke 2022, Int J COPD 17:2289). Counted by hand.
 */
const QUARTER = 'period=2026-27-Q2';
const MRC = 'mrc-dyspnoea';
const MMRC = 'mmrc-dyspnoea';

let service: TestApp;
let report: QuarterlyReport;
let converted = '';
beforeAll(async () => {
  service = await startApp();
  const session = await givenSession(service);
  const outcomes: Body[] = [];
  for (const scale of [MRC, MMRC]) {
    const referralId = await givenReferral(service);
    const asked = (id: string, grade: number): Body => ({
      walkTests: [],
      sitToStands: [],
      questionnaires: [{ questionnaire: id, items: [grade] }],
    });
    await givenAssessment(service, referralId, asked(MRC, 4));
    const discharge = { timepoint: 'discharge', assessedOn: '2026-07-01' };
    await givenAssessment(service, referralId, { ...asked(scale, scale === MRC ? 3 : 2), ...discharge });
    outcomes.push({ referralId, outcome: 'attended' });
    converted = referralId;
  }
  const register = await service
    .as('lead')
    .put(`/api/v1/sessions/${session}/attendances`, { attendances: outcomes });
  expect(register.status, register.text).toBe(200);
  report = (await reportOf(service.as('lead'), QUARTER)) as unknown as QuarterlyReport;
});
afterAll(() => service.close());

const fileOf = async (ending: string): Promise<Buffer> =>
  (await exported(service, `/api/v1/reports/quarterly.${ending}?${QUARTER}`)).content;

describe('a pair of breathlessness across its two scales', () => {
  it('counts among all pairs of the scale of the baseline, and not among those like for like', () => {
    const outcomes = outcomesOf(report, MRC);
    expect(said(outcomes.pairsOverStarters)).toBe('2 of 2');
    expect(said(outcomes.likeForLikePairsOverStarters)).toBe('1 of 2');
    expect(said(outcomes.allPairs.midReached)).toBe('2 of 2');
    expect(said(outcomes.likeForLike.midReached)).toBe('1 of 1');
    expect(outcomes.differences).toEqual([
      { condition: 'scale', name: 'scale', figureId: `differs-by.scale.${MRC}`, pairs: 1 },
    ]);
    expect(said(outcomesOf(report, MMRC).pairsOverStarters)).toBe('0 of 2');
  });

  it('is told of in the quality of the record, of each scale', () => {
    const lostOf = (id: string) =>
      report.dataQuality.pairsLost
        .find(({ measureId }) => measureId === id)
        ?.lost.map(({ reason, referrals }) => [reason, referrals]);
    expect(lostOf(MRC)).toEqual([['not-like-for-like', 1]]);
    expect(lostOf(MMRC)).toEqual([
      ['not-measured', 1],
      ['compared-on-other-scale', 1],
    ]);
  });

  it('has a field of its own in the quality of the record, with its measure and of how many pairs', () => {
    expect(report.dataQuality.gradesConverted).toEqual([
      { measureId: MMRC, shortName: 'mMRC', figureId: `differs-by.scale.${MMRC}`, pairs: 0, ofPairs: 0 },
      { measureId: MRC, shortName: 'MRC', figureId: `differs-by.scale.${MRC}`, pairs: 1, ofPairs: 2 },
    ]);
  });

  it.each([
    `differs-by.scale.${MRC}`,
    `pair-lost.not-like-for-like.${MRC}`,
    `pair-lost.compared-on-other-scale.${MMRC}`,
  ])('opens to the person: %s', async (figureId) => {
    const path = `/api/v1/reports/quarterly/figures/${figureId}/members?${QUARTER}&kind=numerator`;
    const members = itemsOf(await service.as('lead').get(path));
    expect(members.map(({ referralId }) => referralId)).toEqual([converted]);
  });

  it('is said in words with its source where the person counts', async () => {
    const path = `/api/v1/reports/quarterly/figures/pairs.${MRC}/members?${QUARTER}`;
    const member = itemsOf(await service.as('lead').get(path)).find(
      (each) => each['referralId'] === converted,
    );
    expect(member).toMatchObject({ kind: 'numerator' });
    expect(member?.['reason']).toContain('mMRC (0 to 4) grade 2, read as MRC grade 3');
    expect(member?.['reason']).toContain('Yorke 2022');
  });

  const countIn = (tables: readonly ReadTable[]): readonly string[] | undefined =>
    tables
      .find(({ caption }) => caption.includes('converted to the scale of the baseline'))
      ?.rows.flatMap((row) => row.slice(0, 3));

  it('stands with its count and its source in the page, the spreadsheet and the PDF', async () => {
    const pages = await pagesAs(service, 'lead');
    const page = await pages.get(`/report/chapters/data-quality?${QUARTER}`);
    expect(page.text).toContain('mMRC is MRC less 1: Yorke 2022');
    for (const tables of [
      tablesInPage(page.text),
      await tablesInSheets(await fileOf('xlsx')),
      await tablesInPdf(await fileOf('pdf')),
    ]) {
      expect(countIn(tables)).toEqual(['mMRC', '0', '0', 'MRC', '1', '2']);
    }
  });

  it('is a row of the CSV for each scale', async () => {
    const { text } = await service.as('lead').get(`/api/v1/reports/quarterly.csv?${QUARTER}`);
    const rows: readonly Readonly<Record<string, string>>[] = parse(text, { columns: true, bom: true });
    const of = (scale: string, pairs: string, all: string) => ({
      ...{ figureId: `differs-by.scale.${scale}`, ruleId: 'pairs-differ-by@1', statistic: 'count' },
      ...{ n: all, numerator: pairs, denominator: all, value: pairs, unit: 'pairs' },
    });
    expect(
      rows.filter(({ title }) => title?.includes('converted from the other scale') === true),
    ).toMatchObject([of(MMRC, '0', '0'), of(MRC, '1', '2')]);
  });

  it('is told in the text of the report', async () => {
    const { text } = await service.as('lead').get(`/api/v1/reports/quarterly.txt?${QUARTER}`);
    expect(text.replaceAll(/\s+/g, ' ')).toContain(
      'Pairs only by a converted grade: mMRC 0 of 0 pairs, MRC 1 of 2 pairs (mMRC is MRC less 1',
    );
  });

  it('leaves what was recorded as it was: FHIR gives the grade on its own scale', async () => {
    const answer = await service.as('clinician').get(`/api/v1/referrals/${converted}/fhir`);
    expect(answer.status, answer.text).toBe(200);
    const entries = asRecords(asRecord(answer.body)['entry']).map(({ resource }) => asRecord(resource));
    const responses = entries.filter(({ resourceType }) => resourceType === 'QuestionnaireResponse');
    expect(JSON.stringify(responses)).toContain('mmrc-dyspnoea');
  });
});
