import { afterEach, beforeEach, expect, it } from 'vitest';
import { nhsNumbersOfTestRange } from '../../seeds/nhs-numbers.js';
import { pagesAs } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { asRecord } from '../support/response.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let service: TestApp;
let lead: PageClient;
beforeEach(async () => {
  service = await startApp();
  lead = await pagesAs(service, 'lead');
});
afterEach(() => service.close());

/** Measurements of as many people, whom nobody knows. */
function largeSheet(people: number): string {
  const nextNumber = nhsNumbersOfTestRange(1);
  const lines = ['NHS number,Received,Timepoint,Measured on,Measure,Value'];
  for (let person = 0; person < people; person += 1)
    lines.push(`${nextNumber()},13/03/2026,baseline,15/04/2026,CAT,${person % 40}`);
  return lines.join('\n');
}

const underway = async (address: string): Promise<Readonly<Record<string, unknown>>> =>
  asRecord(JSON.parse((await lead.get(`${address}/progress`)).text));

/** Asks as the page does until the work is over; gives every answer before. */
async function untilOver(address: string): Promise<readonly Readonly<Record<string, unknown>>[]> {
  const answers = [];
  for (;;) {
    const answer = await underway(address);
    if (answer['isOver'] === true) return answers;
    answers.push(answer);
  }
}

it('shows how far a large sheet has come while it is judged, and others are answered meanwhile', async () => {
  const taken = await lead.upload('/imports', { name: 'large.csv', content: largeSheet(3000) });
  expect(taken.status, taken.text).toBe(303);
  const address = String(taken.headers['location']);
  const { text } = await lead.get(address);
  const words = /<main[\s\S]*?<\/main>/.exec(text)?.[0];
  expect(words).toMatch(/The file is being read|The rows are being judged: \d+ % \(\d+ of \d+ referrals\)/);
  // Without scripts the page asks again by itself, and there is a link to do so.
  expect(text.includes('<noscript><meta http-equiv="refresh" content="3"/></noscript>')).toBe(true);
  expect(words).toContain('Look again');
  expect((await service.as('clinician').get('/api/v1/patients')).status).toBe(200);
  const answers = await untilOver(address);
  expect(answers.length).toBeGreaterThan(0);
  const judged = (await lead.get(address)).text;
  expect(judged.includes('What would become of the rows; nothing is written yet')).toBe(true);
  expect(judged.includes('http-equiv="refresh"')).toBe(false);
});
