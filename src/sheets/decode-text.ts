/**
 * The text of a file: UTF-8 or UTF-16 with its mark, UTF-8 without, else Windows-1252, which older spreadsheets write.
 *
 * @returns null where the bytes are no text
 */
export function decodeText(bytes: Uint8Array): string | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return decode(bytes, 'utf-16le');
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return decode(bytes, 'utf-16be');
  if (bytes.includes(0)) return null;
  return decode(bytes, 'utf-8') ?? decode(bytes, 'windows-1252');
}

function decode(bytes: Uint8Array, encoding: string): string | null {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
