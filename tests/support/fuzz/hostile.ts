import { chance, pick, wholeBetween } from '../../../seeds/random.js';
import type { Random } from '../../../seeds/random.js';

/** Texts that have broken other programs. */
export const HOSTILE_TEXTS: readonly string[] = [
  '',
  ' ',
  "'; drop table patient; --",
  "' or '1'='1",
  '" union select token_hash from api_token --',
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  '${7*7}{{7*7}}<%= 7*7 %>',
  '../../../../etc/passwd',
  '%00',
  'a\u0000b',
  '\u0007\u001b[31m',
  '\u202edrow',
  '\ud800',
  '\ufffd\ufeff',
  'İıſK',
  '🧓🏽'.repeat(40),
  'é́́́́́',
  'null',
  'undefined',
  'true',
  'NaN',
  '-0',
  '1e999',
  '9'.repeat(400),
  '0x1F',
  '1,5',
  '٣',
  '2026-02-30',
  '2026-13-01',
  '0000-00-00',
  '9999-12-31',
  '-2026-01-01',
  '2026-01-01T00:00:00+14:00',
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  '=cmd|calc',
  'A'.repeat(10_000),
  '\n\r\t',
];

/** Numbers at and beyond the edges of what is counted or measured. */
export const HOSTILE_NUMBERS: readonly number[] = [
  0,
  -0,
  -1,
  1,
  0.1,
  0.30000000000000004,
  -273.15,
  2 ** 31,
  -(2 ** 31) - 1,
  2 ** 53,
  2 ** 53 + 2,
  -(2 ** 63),
  1e21,
  1e308,
  -1e308,
  5e-324,
];

/** Any value that is not what was expected. */
export function hostileValue(random: Random): unknown {
  const kind = wholeBetween(random, 0, 9);
  if (kind <= 3) return pick(random, HOSTILE_TEXTS);
  if (kind <= 6) return pick(random, HOSTILE_NUMBERS);
  if (kind === 7) return pick<unknown>(random, [null, true, false, [], {}, [[]], [null], { '': '' }]);
  if (kind === 8) return nested(wholeBetween(random, 1, 300), chance(random, 0.5));
  return Object.fromEntries(HOSTILE_TEXTS.slice(0, 38).map((text) => [text, text]));
}

/** Lists or objects within each other. */
function nested(depth: number, isList: boolean): unknown {
  let value: unknown = 'deep';
  for (let level = 0; level < depth; level += 1) value = isList ? [value] : { a: value };
  return value;
}

/** Bodies that are no JSON, or JSON that no client would write. */
export function hostileBody(random: Random, valid: string): string | Buffer {
  const cut = wholeBetween(random, 0, valid.length);
  return pick<() => string | Buffer>(random, [
    () => '',
    () => valid.slice(0, cut),
    () => `${valid}${valid}`,
    () => `\ufeff${valid}`,
    () =>
      Buffer.concat([
        Buffer.from(valid.slice(0, cut)),
        Buffer.from([0xff, 0xe9, 0xc0, 0x80]),
        Buffer.from(valid.slice(cut)),
      ]),
    () => `${'['.repeat(20_000)}${']'.repeat(20_000)}`,
    () => `${'{"a":'.repeat(20_000)}1${'}'.repeat(20_000)}`,
    () => `{"__proto__":{"role":"lead"},"constructor":{"prototype":{"role":"lead"}}}`,
    () => valid.replace('{', '{"__proto__":{"isAdmin":true},'),
    () => valid.replace(/\d+/, '9'.repeat(5000)),
    () => valid.replace(/\d+/, '1e400'),
    () => valid.replace(/\d+/, '-0'),
    () => valid.replace(/"[^"]*"/, `"${'\\u0000'.repeat(50)}"`),
    () => valid.replace(/"([^"]*)":/, '"$1":1,"$1":'),
    () => `{"a":"${'A'.repeat(270 * 1024)}"}`,
    () => `[${valid}]`,
    () => JSON.stringify(hostileValue(random)) ?? 'undefined',
    () => 'null',
    () => '0',
    () => '""',
    () => '<?xml version="1.0"?><!DOCTYPE a [<!ENTITY b SYSTEM "file:///etc/passwd">]><a>&b;</a>',
  ])();
}

/** A part of an address as somebody hostile would write it. */
export function hostilePart(random: Random): string {
  const text = pick(random, HOSTILE_TEXTS);
  return pick<() => string>(random, [
    () => encoded(text.slice(0, 300)),
    () => '..%2f..%2fetc%2fpasswd',
    () => '%',
    () => '%zz',
    () => '%c0%ae',
    () => '%00',
    () => '.',
    () => '..',
    () => 'a'.repeat(wholeBetween(random, 1, 5000)),
    () => '0',
    () => '-1',
    () => '%E2%80%AE',
    () => '00000000-0000-0000-0000-000000000000',
    () => '*',
    () => '1;drop',
  ])();
}

/** Percent-encoded; half of a pair of surrogates cannot be. */
export function encoded(text: string): string {
  return encodeURIComponent(text.replace(/\p{Cs}/gu, '\ufffd'));
}

const HEADER_NAMES = ['if-match', 'idempotency-key', 'content-type', 'accept', 'authorization', 'cookie'];

/** A header with a value that nobody expects. */
export function hostileHeader(random: Random): Record<string, string> {
  const value = pick<string>(random, [
    '"',
    '*',
    'W/"1"',
    '"1", "2", "x"',
    '"999999999999999999999"',
    'a'.repeat(4000),
    '',
    ' ',
    'text/plain',
    'application/json; charset=utf-16',
    'application/json;'.repeat(50),
    'multipart/form-data',
    'application/xml',
    "' or 1=1 --",
    'Basic bGVhZDpsZWFk',
    'Bearer',
    `Bearer ${'x'.repeat(199)}`,
    'Bearer null',
    '__Host-session=x; a=b; =; ;;;',
    'é',
  ]);
  return { [pick(random, HEADER_NAMES)]: value };
}
