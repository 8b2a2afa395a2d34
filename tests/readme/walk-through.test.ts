import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

const run = promisify(execFile);
const README = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');

/** The commands of the walk-through, each block as the README shows it. */
const BLOCKS = [...README.matchAll(/^```bash walkthrough\n([\s\S]*?)^```$/gm)].map((match) => match[1] ?? '');

describe('the walk-through of the README', () => {
  let service: TestApp;
  let output = '';

  beforeAll(async () => {
    service = await startApp();
    await service.app.listen({ host: '127.0.0.1', port: 0 });
    const { port } = service.app.server.address() as AddressInfo;
    // The shell shows where each block ends, so that the output of the last ones can be told apart.
    const script = BLOCKS.map((block) => `${block}\nprintf '\\n--- end of block\\n'`).join('\n');
    const { stdout } = await run('bash', ['-euo', 'pipefail', '-c', script], {
      env: {
        PATH: process.env['PATH'],
        TIDEMARK_URL: `http://127.0.0.1:${port}/api/v1`,
        ADMIN_TOKEN: service.tokens.admin,
        CLINICIAN_TOKEN: service.tokens.clinician,
        LEAD_TOKEN: service.tokens.lead,
      },
    });
    output = stdout;
  });
  afterAll(() => service.close());

  it('runs from registering a patient to the report, block by block', () => {
    expect(BLOCKS).toHaveLength(5);
    expect(output.match(/^--- end of block$/gm)).toHaveLength(5);
  });

  it('gives the outcomes of the person: 60 m further, better by the shuttle walk and by the CAT', () => {
    const outcomes = JSON.parse(output.split('--- end of block\n')[3] ?? '') as {
      measures: { measureId: string; change: number; class: string; isLikeForLike: boolean }[];
    };
    // By hand: the better walks are 190 m (level 4 with 4 shuttles is 160 m) and 250 m; CAT items sum to 22 and 19.
    expect(outcomes.measures).toMatchObject([
      { measureId: 'incremental-shuttle-walk-distance', change: 60, class: 'improved', isLikeForLike: true },
      { measureId: 'cat-total', change: -3, class: 'improved', isLikeForLike: true },
    ]);
  });

  it("ends with the quarter's report as a table", () => {
    const report = output.split('--- end of block\n')[4] ?? '';
    expect(report).toContain('Marram Coast PR team');
    expect(report).toContain('2026-27-Q1');
  });
});
