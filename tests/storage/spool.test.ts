import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openSpool } from '../../src/storage/spool.js';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tidemark-spool-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

it('gives the lines back in their order, as often as asked, from memory and from the file', () => {
  const spool = openSpool(folder);
  // Letters of two and three bytes, so that a chunk of the file ends within one; more than a megabyte in all.
  const lines = Array.from({ length: 4000 }, (_, index) => `${index} ${'åäö–'.repeat(100)}`);
  for (const line of lines) spool.add(line);
  expect([...spool.lines()]).toEqual(lines);
  spool.add('one more');
  expect([...spool.lines()]).toEqual([...lines, 'one more']);
  expect(readdirSync(folder)).toEqual([]);
  spool.close();
  expect(() => spool.add('too late')).toThrow();
});
