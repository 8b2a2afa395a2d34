import { createHash } from 'node:crypto';

/** SHA-256 of a file or a text, as hexadecimal digits. */
export function sha256(content: Uint8Array | string): string {
  return createHash('sha256').update(content).digest('hex');
}

/** SHA-256 of what is added a part at a time, as hexadecimal digits. */
export function sha256Of(): {
  readonly add: (content: Uint8Array | string) => void;
  readonly end: () => string;
} {
  const hash = createHash('sha256');
  return {
    add: (content) => {
      hash.update(content);
    },
    end: () => hash.digest('hex'),
  };
}
