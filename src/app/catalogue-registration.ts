import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { format } from 'prettier';

/** A list in a registration file, gathered from one folder of definition files. */
interface RegisteredList {
  readonly constant: string;
  readonly type: string;
  /** Module of the type, relative to the registration file. */
  readonly typeModule: string;
  /** Folder of definition files, relative to the registration file. */
  readonly folder: string;
}

/** A registration file and the lists it holds. */
export interface Registration {
  readonly directory: string;
  readonly lists: readonly RegisteredList[];
}

/** Every folder in which one file is one entry of the catalogue. */
export const REGISTRATIONS: readonly Registration[] = [
  {
    directory: 'src/domain/measures',
    lists: [
      list('WALK_TESTS', 'WalkTest', 'walk-test', 'walk-tests'),
      list('SIT_TO_STAND_TESTS', 'SitToStandTest', 'sit-to-stand-test', 'sit-to-stand'),
      list('QUESTIONNAIRES', 'Questionnaire', 'questionnaire', 'questionnaires'),
      list('PHYSICAL_TESTS', 'PhysicalTest', 'physical-test', 'physical-tests'),
    ],
  },
  {
    directory: 'src/domain/prediction',
    lists: [
      list('PREDICTION_EQUATIONS', 'PredictionEquation', 'prediction-equation', 'equations'),
      list('NORMS', 'Norm', 'norm', 'norms'),
    ],
  },
  {
    directory: 'src/domain/indicators',
    lists: [list('INDICATORS', 'Indicator', 'indicator', 'definitions')],
  },
  {
    directory: 'src/domain/safety',
    lists: [list('SAFETY_CHECKLIST', 'SafetyList', 'safety-list', 'lists')],
  },
];

/**
 * Writes out the text of a registration file from the definition files that are there.
 *
 * @param registration the file's folder and lists; a list whose folder is absent or empty is left out
 * @param root top folder of the project
 * @returns path relative to the root and formatted text; null where no list has a definition file
 * @throws Error naming a definition file that does not export exactly one constant named like the file
 */
export async function renderRegistration(
  registration: Registration,
  root: string,
): Promise<{ readonly path: string; readonly text: string } | null> {
  const directory = join(root, registration.directory);
  const filled = registration.lists
    .map((each) => ({ ...each, names: definitionNames(join(directory, each.folder)) }))
    .filter((each) => each.names.length > 0);
  if (filled.length === 0) return null;
  const lines = [
    '// Written by `npm run catalogue` from the definition files beside it. Do not edit.',
    ...filled.map((each) => `import type { ${each.type} } from './${each.typeModule}.js';`),
    ...filled.flatMap((each) =>
      each.names.map((name) => `import { ${constantName(name)} } from './${each.folder}/${name}.js';`),
    ),
    '',
    ...filled.map(
      (each) =>
        `export const ${each.constant}: readonly ${each.type}[] = [${each.names.map(constantName).join(', ')}];\n`,
    ),
  ];
  const text = await format(lines.join('\n'), { parser: 'typescript', printWidth: 110, singleQuote: true });
  return { path: `${registration.directory}/registered.ts`, text };
}

/** The constant that a definition file must export. @example constantName('eq-5d-5l') -> 'EQ_5D_5L' */
export function constantName(fileName: string): string {
  return fileName.replaceAll('-', '_').toUpperCase();
}

function definitionNames(folder: string): readonly string[] {
  if (!existsSync(folder)) return [];
  const names = readdirSync(folder)
    .filter((file) => file.endsWith('.ts'))
    .map((file) => file.slice(0, -'.ts'.length))
    .sort();
  for (const name of names) {
    const exported = [...readFileSync(join(folder, `${name}.ts`), 'utf8').matchAll(/^export (.*)$/gm)];
    const isSound = exported.length === 1 && exported[0]?.[1]?.startsWith(`const ${constantName(name)}:`);
    if (isSound !== true) {
      throw new Error(
        `${join(folder, name)}.ts must export exactly one constant, ${constantName(name)}, typed`,
      );
    }
  }
  return names;
}

function list(constant: string, type: string, typeModule: string, folder: string): RegisteredList {
  return { constant, type, typeModule, folder };
}
