import { inflateSync } from 'node:zlib';

const HEADER_BYTES = 44;
const ENTRY_BYTES = 20;
const SFNT_HEADER_BYTES = 12;
const SFNT_ENTRY_BYTES = 16;

/**
 * A typeface unpacked from WOFF, so that its tables need not be inflated whenever a glyph is asked for.
 *
 * @param woff a file of version 1
 * @returns the same typeface as TrueType or OpenType
 * @source W3C Recommendation, WOFF File Format 1.0, sections 3 to 5.
 */
export function unpackWoff(woff: Buffer): Buffer {
  const count = woff.readUInt16BE(12);
  const power = Math.floor(Math.log2(count));
  const head = Buffer.alloc(SFNT_HEADER_BYTES + count * SFNT_ENTRY_BYTES);
  woff.copy(head, 0, 4, 8);
  head.writeUInt16BE(count, 4);
  head.writeUInt16BE(2 ** power * 16, 6);
  head.writeUInt16BE(power, 8);
  head.writeUInt16BE(count * 16 - 2 ** power * 16, 10);
  const tables: Buffer[] = [];
  let at = head.length;
  for (let index = 0; index < count; index += 1) {
    const entry = HEADER_BYTES + index * ENTRY_BYTES;
    const [offset, packed, length] = [4, 8, 12].map((field) => woff.readUInt32BE(entry + field));
    if (offset === undefined || packed === undefined || length === undefined)
      throw new Error('No such table.');
    const stored = woff.subarray(offset, offset + packed);
    const table = packed < length ? inflateSync(stored) : stored;
    const padded = Buffer.alloc(Math.ceil(length / 4) * 4);
    table.copy(padded);
    const to = SFNT_HEADER_BYTES + index * SFNT_ENTRY_BYTES;
    woff.copy(head, to, entry, entry + 4);
    woff.copy(head, to + 4, entry + 16, entry + 20);
    head.writeUInt32BE(at, to + 8);
    head.writeUInt32BE(length, to + 12);
    tables.push(padded);
    at += padded.length;
  }
  return Buffer.concat([head, ...tables]);
}
