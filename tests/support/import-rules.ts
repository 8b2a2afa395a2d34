import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

/** An import as it stands in a file. */
export interface ImportLine {
  /** Path of the file from the top of the project. */
  readonly file: string;
  readonly specifier: string;
  /** Nothing of it is left when the program runs. */
  readonly isTypeOnly: boolean;
}

/** What a part of the project may import; itself always. */
interface Part {
  readonly parts: readonly string[];
  /** Parts of which it may know types, and nothing that runs. */
  readonly typesOf: readonly string[];
  /** Packages and modules of the runtime, as patterns. */
  readonly packages: readonly RegExp[];
}

const SERVER_PACKAGES = [/^fastify$/, /^@fastify\//, /^fastify-type-provider-zod$/, /^zod$/, /^node:http$/];
const EVERY_PART = [
  'domain',
  'storage',
  'auth',
  'plots',
  'documents',
  'reports',
  'sheets',
  'fhir',
  'usecases',
  'http',
  'web',
  'app',
];

/** The direction of dependencies: each part may import what stands here and nothing else. */
export const RULES: Readonly<Record<string, Part>> = {
  domain: { parts: [], typesOf: [], packages: [] },
  // Hashing chains the entries of the audit trail; long reading lets others work in between; what a long trial puts by
  // lies in a file without a name.
  storage: {
    parts: ['domain'],
    typesOf: [],
    packages: [/^kysely$/, /^better-sqlite3$/, /^node:(?:crypto|fs|path)$/, /^node:timers\/promises$/],
  },
  // Hashes of passphrases, the list of common ones, codes of second factors, and the client of a provider.
  auth: {
    parts: ['domain'],
    typesOf: [],
    packages: [
      /^node:crypto$/,
      /^@node-rs\/argon2$/,
      /^@zxcvbn-ts\/language-common$/,
      /^otpauth$/,
      /^openid-client$/,
    ],
  },
  // Drawings know numbers and words, and nothing of whom they are about.
  plots: { parts: [], typesOf: [], packages: [/^d3-(?:scale|shape)$/] },
  // Documents of sections, tables and drawings, and the forms they are written in; of whom they tell they know nothing.
  documents: {
    parts: ['plots'],
    typesOf: [],
    packages: [
      /^write-excel-file\/node$/,
      /^pdfkit$/,
      /^svg-to-pdfkit$/,
      /^node:(?:fs|module|timers\/promises|zlib)$/,
    ],
  },
  reports: { parts: ['domain', 'plots', 'documents'], typesOf: [], packages: [] },
  // Files of tables, in and out; long ones let others work in between.
  sheets: {
    parts: ['domain'],
    typesOf: [],
    packages: [
      /^csv-(?:parse|stringify)(?:\/|$)/,
      /^read-excel-file\//,
      /^write-excel-file\//,
      /^fflate$/,
      /^node:(?:crypto|stream|stream\/promises|timers\/promises)$/,
    ],
  },
  // Resources of FHIR, out and in; ids of what is no record of its own are derived from names.
  fhir: { parts: ['domain'], typesOf: [], packages: [/^uuid$/] },
  usecases: {
    parts: ['domain', 'storage', 'auth', 'reports', 'documents', 'sheets', 'fhir'],
    typesOf: [],
    packages: [],
  },
  http: {
    parts: ['usecases', 'auth', 'reports', 'documents', 'domain'],
    typesOf: ['storage'],
    packages: SERVER_PACKAGES,
  },
  web: {
    parts: ['usecases', 'auth', 'reports', 'plots', 'documents', 'domain'],
    typesOf: ['storage'],
    // Pages serve their own assets, compressed, and draw the code that an authenticator reads.
    packages: [...SERVER_PACKAGES, /^@kitajs\//, /^qrcode$/, /^node:(?:crypto|fs|path|url|module|zlib)$/],
  },
  app: { parts: [...EVERY_PART, 'migrations', 'seeds'], typesOf: [], packages: [/./] },
  migrations: { parts: [], typesOf: [], packages: [/^kysely$/] },
  seeds: { parts: ['usecases', 'domain'], typesOf: [], packages: [] },
};

/**
 * The rule that an import breaks, in words; null when it breaks none.
 *
 * @example src/domain/change/change.ts importing 'zod' -> 'domain does not import the package zod'
 */
export function brokenRule(line: ImportLine): string | null {
  const part = partOf(line.file);
  const rule = RULES[part];
  if (rule === undefined) return `${part} is no part that the rules know`;
  if (!line.specifier.startsWith('.')) {
    if (line.specifier === 'simple-statistics') {
      return line.file.startsWith('src/domain/statistics/')
        ? null
        : 'simple-statistics is imported in src/domain/statistics only';
    }
    if (line.specifier === 'yalps') {
      return line.file.startsWith('src/domain/attack/')
        ? null
        : 'yalps is imported in src/domain/attack only';
    }
    return rule.packages.some((allowed) => allowed.test(line.specifier))
      ? null
      : `${part} does not import the package ${line.specifier}`;
  }
  const target = partOf(targetOf(line));
  if (target === part || rule.parts.includes(target)) return null;
  if (rule.typesOf.includes(target)) {
    return line.isTypeOnly ? null : `${part} imports types of ${target} only`;
  }
  return `${part} does not import ${target}`;
}

/** The file that a relative import leads to, as TypeScript source. */
export function targetOf({ file, specifier }: ImportLine): string {
  return normalize(join(dirname(file), specifier)).replace(/\.js$/, '.ts');
}

/** Every import and re-export of a text, dynamic ones included. */
export function importsOf(file: string, text: string): readonly ImportLine[] {
  const code = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
  const lines = [
    ...code.matchAll(/^[ \t]*(?:import|export)\s+(type\s+)?(?:[\w*{][^;'"]*?\sfrom\s+)?'([^']+)'/gm),
  ].map(([, type, specifier = '']) => ({ file, specifier, isTypeOnly: type !== undefined }));
  const dynamic = [...code.matchAll(/\bimport\(\s*'([^']+)'/g)].map(([, specifier = '']) => ({
    file,
    specifier,
    isTypeOnly: false,
  }));
  return [...lines, ...dynamic];
}

/** TypeScript files below a folder, as paths from the top of the project. */
export function sourceFiles(folder: string): readonly string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(folder, name))
    .sort();
}

/** The text of a file of the project. */
export function readSource(file: string): string {
  return readFileSync(file, 'utf8');
}

/** `domain` of `src/domain/change/pair.ts`, `migrations` of `migrations/index.ts`. */
function partOf(file: string): string {
  const [top = '', second = ''] = file.split('/');
  return top === 'src' ? second : top;
}
