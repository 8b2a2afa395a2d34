import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Browser } from 'playwright-core';
import { nhsNumbersOfTestRange } from '../../seeds/nhs-numbers.js';
import { faultsOfAccess } from '../support/axe.js';
import { openBrowser, serve } from '../support/browser.js';
import { openSignedIn } from '../support/signed-in.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let service: TestApp;
let browser: Browser;
let origin: string;
beforeAll(async () => {
  service = await startApp();
  origin = await serve(service.app);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
  await service.close();
});

const HEADINGS =
  'NHS number,Surname,Forename,DOB,Received,Diagnosis,Baseline assessment,Baseline MRC,Baseline 6MWT';
const SHEET = [
  HEADINGS,
  '9990001006,Whimbrel,Samphire,31/03/1950,13/04/2026,COPD,27/04/2026,3,280m',
  '9990001022,Plover,Sandy,13/05/1955,20/04/2026,COPD,28/04/2026,4,>1000',
].join('\n');

const file = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });

it('lets a lead hand a sheet in, map it, see every row, mend, send again, see the report change, and undo', async () => {
  const { page, complaints } = await openSignedIn(browser, service, origin, 'lead');
  page.setDefaultTimeout(8000);
  const axeIsClean = async (): Promise<void> => {
    expect(await faultsOfAccess(page)).toEqual([]);
  };
  const referred = async (): Promise<string> => {
    const response = await service.as('lead').get('/api/v1/reports/quarterly.txt?period=2026-27-Q1');
    return response.text.replace(/^.*generated.*$/gim, '');
  };
  const before = await referred();

  await page.goto('/imports');
  await axeIsClean();
  await page.getByRole('button', { name: 'Look at the file' }).click();
  await axeIsClean();
  expect(await page.locator('.notice.errors').innerText()).toContain('Choose the file.');
  await page.getByLabel('The file', { exact: true }).setInputFiles(file('april.csv', SHEET));
  await page.getByRole('button', { name: 'Look at the file' }).click();

  // What can mean two things is asked for.
  expect(await page.getByRole('main').innerText()).toContain(
    'MRC dyspnoea scale (grades 1 to 5) or the mMRC',
  );
  await axeIsClean();
  await page.getByLabel('What "Baseline MRC" is taken for').fill('no such column');
  await page.getByRole('button', { name: 'Judge the rows' }).click();
  expect(await page.locator('.notice.errors').innerText()).toContain('There is no column "no such column"');
  await page.getByLabel('What "Baseline MRC" is taken for').fill('Baseline: MRC in grade');
  await page.getByLabel('Site of rows that name none').selectOption({ label: 'Dune Hall' });
  await page.getByRole('button', { name: 'Judge the rows' }).click();

  const main = page.getByRole('main');
  expect(await main.innerText()).toContain('A limit is no result.');
  await axeIsClean();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Take the rows to mend as a file' }).click(),
  ]);
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  const toMend = Buffer.concat(chunks).toString('utf8');
  expect(toMend).toContain('Plover');
  expect(toMend).not.toContain('Whimbrel');
  await page.getByRole('button', { name: 'Bring the rows in' }).click();
  await page.getByText('Brought in', { exact: true }).waitFor();
  await axeIsClean();
  const afterFirst = await referred();
  expect(afterFirst).not.toBe(before);

  await page.goto('/imports');
  await page
    .getByLabel('The file', { exact: true })
    .setInputFiles(file('mended.csv', toMend.replace('>1000', '310')));
  await page.getByRole('button', { name: 'Look at the file' }).click();
  // What was said of these columns is remembered, and the two behind them hold nothing to be read.
  await page.getByRole('button', { name: 'Bring the rows in' }).click();
  await page.getByText('Brought in', { exact: true }).waitFor();
  expect(await referred()).not.toBe(afterFirst);

  await page.getByLabel('Why').fill('Sent too early');
  await page.getByRole('button', { name: 'Take out again what this import brought in' }).click();
  await page.getByText('Undone', { exact: true }).waitFor();
  expect(await referred()).toBe(afterFirst);
  expect(complaints).toEqual([]);
}, 90_000);

it('shows a lead how far a large sheet has come, and by itself what became of it', async () => {
  const { page, complaints } = await openSignedIn(browser, service, origin, 'lead');
  page.setDefaultTimeout(20_000);
  const nextNumber = nhsNumbersOfTestRange(1);
  const rows = Array.from({ length: 4000 }, () => `${nextNumber()},13/03/2026,baseline,15/04/2026,CAT,22`);
  const sheet = ['NHS number,Received,Timepoint,Measured on,Measure,Value', ...rows].join('\n');
  await page.goto('/imports');
  await page.getByLabel('The file', { exact: true }).setInputFiles(file('large.csv', sheet));
  // Others hold the record for as long as the page is looked at, so that it does not go on under the checker.
  let letGo = (): void => {};
  const gate = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  await page.getByRole('button', { name: 'Look at the file' }).click();
  const held = service.record.connection.db.transaction().execute(() => gate);
  try {
    await page.getByRole('progressbar', { name: 'How far it has come' }).waitFor();
    expect(await faultsOfAccess(page)).toEqual([]);
  } finally {
    letGo();
    await held;
  }
  // Nobody presses anything.
  await page.getByText('The first 100 of 4000 rows that are not simply taken').first().waitFor();
  expect(complaints).toEqual([]);
}, 60_000);
