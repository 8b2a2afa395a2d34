import { chance, pick, wholeBetween } from '../../../seeds/random.js';
import type { Random } from '../../../seeds/random.js';
import { asRecord, asRecords } from '../response.js';
import type { Schema } from './operations-of-document.js';

/** Where values come from that a schema does not tell: ids of records that are there, by the name of the field. */
export interface ValueSource {
  readonly random: Random;
  readonly schemaAt: (reference: string) => Schema;
  readonly idFor: (field: string, random: Random) => string;
  readonly nhsNumber: (random: Random) => string;
}

const WORDS = [
  'Sandwort',
  'Mavis',
  'tide',
  'by telephone',
  'Ærø',
  "O'Dune",
  'Zoë-Ann',
  'letter of 4 May',
  '0',
];
const CATALOGUE_IDS = [
  'six-minute-walk-distance',
  'incremental-shuttle-walk-distance',
  'cat-total',
  'probst-2012',
  'enright-sherrill-1998',
  'started-within-90-days',
  'cat-total/copd',
];
const DEEPEST = 8;

/** A value that a schema accepts, so far as the schema tells; rules of the domain may still refuse it. */
export function valueFor(source: ValueSource, schema: Schema, field = '', depth = 0): unknown {
  const { random } = source;
  if (typeof schema['$ref'] === 'string') {
    return valueFor(source, source.schemaAt(schema['$ref']), field, depth + 1);
  }
  if ('const' in schema) return schema['const'];
  if (Array.isArray(schema['enum'])) return pick(random, schema['enum'] as unknown[]);
  const choices = schema['anyOf'] ?? schema['oneOf'];
  if (Array.isArray(choices)) return valueFor(source, pick(random, asRecords(choices)), field, depth + 1);
  switch (typeIn(schema, random)) {
    case 'object':
      return objectFor(source, schema, depth);
    case 'array':
      return arrayFor(source, schema, field, depth);
    case 'string':
      return textFor(source, schema, field);
    case 'integer':
      return wholeBetween(random, ...rangeOf(schema, 0, 300));
    case 'number': {
      const [low, high] = rangeOf(schema, 0, 300);
      const value = low + random.next() * (high - low);
      return chance(random, 0.7) ? Math.round(value) : Math.round(value * 10) / 10;
    }
    case 'boolean':
      return chance(random, 0.5);
    case 'null':
      return null;
    default:
      return pick(random, [null, 0, 'text', [], {}]);
  }
}

function typeIn(schema: Schema, random: Random): unknown {
  const { type } = schema;
  if (Array.isArray(type)) return pick(random, type as unknown[]);
  return type ?? ('properties' in schema ? 'object' : undefined);
}

function rangeOf(schema: Schema, low: number, high: number): [number, number] {
  const { minimum, maximum } = schema;
  const from = typeof minimum === 'number' && minimum > -1_000_000 ? minimum : low;
  const to = typeof maximum === 'number' && maximum < 1_000_000 ? maximum : Math.max(high, from);
  return [from, to];
}

function objectFor(source: ValueSource, schema: Schema, depth: number): Record<string, unknown> {
  const { random } = source;
  const required = new Set((schema['required'] ?? []) as string[]);
  const made: [string, unknown][] = [];
  // Fewer and fewer of what may be left out, so that it ends.
  const share = 0.6 / (1 + depth / 4);
  for (const [name, property] of Object.entries(asRecord(schema['properties'] ?? {}))) {
    if (required.has(name) || (depth < DEEPEST && chance(random, share))) {
      made.push([name, valueFor(source, asRecord(property), name, depth + 1)]);
    }
  }
  const others = schema['additionalProperties'];
  if (typeof others === 'object' && others !== null) {
    for (let count = wholeBetween(random, 0, 3); count > 0; count -= 1) {
      const name = pick(random, CATALOGUE_IDS);
      made.push([name, valueFor(source, asRecord(others), name, depth + 1)]);
    }
  }
  return Object.fromEntries(made);
}

function arrayFor(source: ValueSource, schema: Schema, field: string, depth: number): unknown[] {
  const most = typeof schema['maxItems'] === 'number' ? schema['maxItems'] : 20;
  const { random } = source;
  const length = Math.min(
    most,
    chance(random, 0.8) ? wholeBetween(random, 0, 3) : wholeBetween(random, 4, 20),
  );
  const items = asRecord(schema['items'] ?? {});
  return Array.from({ length: depth > DEEPEST ? 0 : length }, () =>
    valueFor(source, items, field, depth + 1),
  );
}

function textFor({ random, idFor, nhsNumber }: ValueSource, schema: Schema, field: string): string {
  const pattern = typeof schema['pattern'] === 'string' ? schema['pattern'] : '';
  if (field === 'nhsNumber') return nhsNumber(random);
  if (schema['format'] === 'uuid' || pattern.startsWith('^([0-9a-fA-F]{8}')) return idFor(field, random);
  if (schema['format'] === 'date-time' || pattern.includes('T(')) return `${dayNear(random)}T10:00:00.000Z`;
  if (schema['format'] === 'date' || pattern.startsWith('^(?:(?:\\d')) {
    return field === 'bornOn'
      ? `19${wholeBetween(random, 30, 70)}-0${wholeBetween(random, 1, 9)}-11`
      : dayNear(random);
  }
  if (pattern === '^[A-Z0-9]{3,12}$') return `M${wholeBetween(random, 10_000, 99_999)}`;
  if (pattern.startsWith('^[\\x21')) return `key-${wholeBetween(random, 1, 400)}`;
  if (/Id$/.test(field)) return pick(random, CATALOGUE_IDS);
  const most = typeof schema['maxLength'] === 'number' ? schema['maxLength'] : 80;
  return pick(random, WORDS).slice(0, most);
}

/** A day of the months around the test's present, Wednesday 25 November 2026; a few lie ahead. */
function dayNear(random: Random): string {
  const month = wholeBetween(random, 1, 12);
  return `2026-${String(month).padStart(2, '0')}-${String(wholeBetween(random, 1, 28)).padStart(2, '0')}`;
}
