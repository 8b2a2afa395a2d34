import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { britishDate } from '../../../src/domain/calendar/british-date.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { pagesWith } from '../../support/page-client.js';
import { buildDemo } from '../../../seeds/build-demo.js';
import { asRecord, asRecords, itemsOf, textAt } from '../../support/response.js';
import { sessionSecretOf } from '../../support/signed-in.js';
import { clientOf, startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

type Json = Readonly<Record<string, unknown>>;

/** Referrals that are looked at, by chance but always the same ones. */
const LOOKED_AT = 50;
const TODAY = '2026-11-25';

let service: TestApp;
/** A referral as the API tells it and as its page shows it. */
let both: readonly { readonly measures: readonly Json[]; readonly rows: readonly Row[] }[];

beforeAll(async () => {
  service = await startApp();
  const demo = await buildDemo(service.record.context, { today: plainDate(TODAY), seed: 50, scale: 0.07 });
  const clinician = demo.accounts.find(({ role }) => role === 'clinician');
  if (clinician === undefined) throw new Error('The scenario has no clinician.');
  const api = clientOf(service.app, clinician.token);
  const pages = pagesWith(service, await sessionSecretOf(service, clinician.accountId));
  const ids = itemsOf(await api.get('/api/v1/referrals?limit=200')).map((item) => textAt(item, 'id'));
  const looked: { measures: readonly Json[]; rows: readonly Row[] }[] = [];
  for (const id of shuffled(ids).slice(0, LOOKED_AT)) {
    const outcomes = asRecord((await api.get(`/api/v1/referrals/${id}/outcomes`)).body);
    const page = await pages.get(`/referrals/${id}`);
    expect(page.status).toBe(200);
    looked.push({ measures: asRecords(outcomes['measures']), rows: rowsOf(page.text) });
  }
  both = looked;
});
afterAll(() => service.close());

describe('the pages of fifty referrals of the invented scenario', () => {
  it('show the numbers of every measure as the API gives them', () => {
    for (const { measures, rows } of both) expect(rows).toEqual(measures.map(expectedRow));
  });

  it('have enough to compare: ends, changes of every class and percentages predicted', () => {
    const measures = both.flatMap((each) => each.measures);
    expect(both).toHaveLength(LOOKED_AT);
    expect(measures.length).toBeGreaterThan(200);
    const classes = measures.map((measure) => measure['class']);
    for (const kind of ['improved', 'worse', 'little-change', null]) expect(classes).toContain(kind);
    const rows = both.flatMap((each) => each.rows);
    expect(rows.filter(({ baseline }) => /% predicted/.test(baseline.predicted)).length).toBeGreaterThan(20);
    expect(rows.filter(({ discharge }) => /% predicted/.test(discharge.predicted)).length).toBeGreaterThan(5);
  });
});

interface End {
  readonly value: number | null;
  readonly on: string;
  readonly predicted: string;
}

/** A measure as a reader sees it. */
interface Row {
  readonly name: string;
  readonly baseline: End;
  readonly discharge: End;
  readonly change: number | null;
  /** Improved, worse and so on in words; why there is no pair where there is none. */
  readonly words: string;
}

/** What the page must show of a measure: numbers to the places of its unit, predicted shares as whole percentages. */
function expectedRow(measure: Json): Row {
  const change = measure['change'];
  const places = PLACES[textAt(measure, 'unit')] ?? 1;
  return {
    name: textAt(measure, 'name'),
    baseline: expectedEnd(measure['baseline'], places),
    discharge: expectedEnd(measure['discharge'], places),
    change: change === null ? null : roundedTo(places, Number(change)),
    words: CLASS_WORDS[String(measure['class'])] ?? textAt(measure, 'noPairReason'),
  };
}

const CLASS_WORDS: Readonly<Record<string, string>> = {
  improved: 'improved by the MID or more',
  worse: 'worse by the MID or more',
  'little-change': 'less than the MID either way',
  'change-only': 'not judged: no MID is known',
};

function expectedEnd(end: unknown, places: number): End {
  if (end === null) return { value: null, on: '', predicted: '' };
  const { value, assessedOn, predicted } = asRecord(end);
  const share = predicted === null ? null : asRecord(predicted)['percentPredicted'];
  const reason = predicted === null ? null : asRecord(predicted)['notPredictedReason'];
  return {
    value: roundedTo(places, Number(value)),
    on: britishDate(plainDate(String(assessedOn))),
    predicted:
      predicted === null
        ? ''
        : share === null
          ? `Not predicted. ${String(reason)}`
          : `${Math.round(Number(share))}% predicted`,
  };
}

/** Places in which the measures of a unit are typed; one for any other. */
const PLACES: Readonly<Record<string, number>> = { utility: 3, 'mean item score': 2, 'm/s': 2 };

/** Halves away from zero. */
function roundedTo(places: number, value: number): number {
  const size = Math.round(Math.abs(value) * 10 ** places) / 10 ** places;
  return value < 0 && size !== 0 ? -size : size;
}

/** The rows of the table of both ends; none where nothing was measured. */
function rowsOf(html: string): readonly Row[] {
  const table = /<caption>Each measure at both ends[\s\S]*?<\/table>/.exec(html)?.[0] ?? '';
  const body = /<tbody>([\s\S]*)<\/tbody>/.exec(table)?.[1] ?? '';
  return [...body.matchAll(/<tr>([\s\S]*?)<\/tr>/g)].map(([, row = '']) => {
    const cells = row
      .split(/<t[hd]\b/)
      .slice(1)
      .map(textsOf);
    const [[name = ''] = [], baseline = [], discharge = [], [change = ''] = [], [words = ''] = []] = cells;
    return {
      name,
      baseline: endOf(baseline),
      discharge: endOf(discharge),
      change: change === '' ? null : numberOf(change),
      words,
    };
  });
}

function endOf([value = '', on = '', predicted = '']: readonly string[]): End {
  if (value === 'not measured') return { value: null, on: '', predicted: '' };
  return { value: numberOf(value), on, predicted: predicted.replace(/ \([^)]*\)$/, '') };
}

/** A minus is written as such, and a gain with its sign. */
function numberOf(text: string): number {
  return Number(text.replace('\u2212', '-').replace('+', ''));
}

/** The texts of a cell in their order, as a reader sees them. */
function textsOf(cell: string): readonly string[] {
  return [...cell.replace(/^[^>]*/, '').matchAll(/>([^<]+)/g)]
    .map(([, text = '']) => unescaped(text).replaceAll('\u00a0', '').trim())
    .filter((text) => text !== '');
}

function unescaped(text: string): string {
  return text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&#34;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');
}

/** Texts in an order by chance that is the same in every run; their ids are not, their places are. */
function shuffled(texts: readonly string[]): readonly string[] {
  let state = 20261125;
  const next = (): number => (state = (state * 48_271) % 2_147_483_647);
  return texts
    .map((text) => ({ text, place: next() }))
    .sort((a, b) => a.place - b.place)
    .map(({ text }) => text);
}
