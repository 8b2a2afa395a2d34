import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync } from 'node:fs';

const CHUNK_BYTES = 1024 * 1024;

/** SHA-256 of a file in hexadecimal, read piece by piece: a record may be larger than what fits into memory. */
export function sha256OfFile(file: string): string {
  const hash = createHash('sha256');
  const chunk = Buffer.alloc(CHUNK_BYTES);
  const handle = openSync(file, 'r');
  try {
    for (let length = readSync(handle, chunk); length > 0; length = readSync(handle, chunk)) {
      hash.update(chunk.subarray(0, length));
    }
  } finally {
    closeSync(handle);
  }
  return hash.digest('hex');
}
