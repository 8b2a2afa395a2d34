import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { constantName, REGISTRATIONS, renderRegistration } from '../../src/app/catalogue-registration.js';

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

const registration = {
  directory: 'src/shapes',
  lists: [
    { constant: 'ROUNDS', type: 'Round', typeModule: 'round', folder: 'rounds' },
    { constant: 'SQUARES', type: 'Square', typeModule: 'square', folder: 'squares' },
  ],
};

describe('the registration of the catalogue', () => {
  it.each(REGISTRATIONS.map((each) => [each.directory, each] as const))(
    'is up to date in %s (npm run catalogue)',
    async (_, each) => {
      const rendered = await renderRegistration(each, process.cwd());
      if (rendered === null) throw new Error(`${each.directory} has no definition file`);
      expect(readFileSync(rendered.path, 'utf8')).toBe(rendered.text);
    },
  );

  it('lists every definition file, sorted by name, and leaves an absent folder out', async () => {
    const root = project({ 'rounds/disc.ts': 'DISC', 'rounds/ball-2.ts': 'BALL_2' });
    expect(await renderRegistration(registration, root)).toEqual({
      path: 'src/shapes/registered.ts',
      text: [
        '// Written by `npm run catalogue` from the definition files beside it. Do not edit.',
        "import type { Round } from './round.js';",
        "import { BALL_2 } from './rounds/ball-2.js';",
        "import { DISC } from './rounds/disc.js';",
        '',
        'export const ROUNDS: readonly Round[] = [BALL_2, DISC];',
        '',
      ].join('\n'),
    });
  });

  it('writes nothing where no folder has a definition', async () => {
    expect(await renderRegistration(registration, project({}))).toBeNull();
  });

  it('refuses a definition file whose constant is not named like the file', async () => {
    const root = project({ 'rounds/disc.ts': 'DISK' });
    await expect(renderRegistration(registration, root)).rejects.toThrow(
      /disc\.ts must export exactly one constant, DISC/,
    );
  });

  it('refuses a definition file with a second export', async () => {
    const root = project({ 'rounds/disc.ts': 'DISC' });
    writeFileSync(
      join(root, 'src/shapes/rounds/disc.ts'),
      'export const DISC: Round = {};\nexport const MORE: Round = {};\n',
    );
    await expect(renderRegistration(registration, root)).rejects.toThrow(/exactly one constant/);
  });

  it('names a constant like its file', () => {
    expect(constantName('eq-5d-5l')).toBe('EQ_5D_5L');
  });
});

/** A throwaway project with one definition file for each path, exporting the named constant. */
function project(files: Readonly<Record<string, string>>): string {
  const root = mkdtempSync(join(tmpdir(), 'catalogue-'));
  folders.push(root);
  for (const [path, constant] of Object.entries(files)) {
    const file = join(root, registration.directory, path);
    mkdirSync(join(file, '..'), { recursive: true });
    writeFileSync(file, `export const ${constant}: Round = {};\n`);
  }
  return root;
}
