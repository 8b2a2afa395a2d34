import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { findChromium } from '../support/browser.js';

const folder = mkdtempSync(join(tmpdir(), 'tidemark-chromium-'));
const there = join(folder, 'chromium');
writeFileSync(there, '');
afterAll(() => rmSync(folder, { recursive: true }));

describe('the browser of the tests', () => {
  it('is the one that the environment names', () => {
    expect(findChromium({ TIDEMARK_CHROMIUM: there }, [])).toBe(there);
    expect(findChromium({ CHROMIUM_PATH: there }, [])).toBe(there);
  });

  it('is never another one where the one that is named is not there', () => {
    expect(() => findChromium({ TIDEMARK_CHROMIUM: join(folder, 'none') }, [there])).toThrow(
      /TIDEMARK_CHROMIUM names .*none, which is not there/,
    );
  });

  it('else is the first of the usual paths that is there', () => {
    expect(findChromium({}, [join(folder, 'none'), there])).toBe(there);
  });
});
