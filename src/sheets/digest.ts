import { createHash } from 'node:crypto';

/** SHA-256 of a file or a text, as hexadecimal digits. */
export function sha256(content: Uint8Array | string): string {
  return createHash('sha256').update(content).digest('hex');
}
