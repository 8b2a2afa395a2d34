import { closeSync, openSync, readSync, unlinkSync, writeFileSync } from 'node:fs';
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';

/** Lines that are put by for a while, in the order in which they came. */
export interface Spool {
  /** @param line without a line end */
  readonly add: (line: string) => void;
  readonly lines: () => Iterable<string>;
  /** Nothing of the lines is kept. */
  readonly close: () => void;
}

/** What is kept in memory before it goes to the file; small spools need none. */
const IN_MEMORY_CHARACTERS = 1024 * 1024;
const READ_BYTES = 256 * 1024;
const LINE_END = 0x0a;

/**
 * Puts lines by: few in memory, many in a file that has no name any more once it is open, so that nothing is left of it
 * when the program ends, however it ends.
 *
 * @param folder where the file lies: beside the record, since it holds the same
 */
export function openSpool(folder: string): Spool {
  let [file, waiting, waitingCharacters, isClosed]: [number | null, string[], number, boolean] = [
    null,
    [],
    0,
    false,
  ];
  const toFile = (): void => {
    file ??= openNameless(folder);
    writeFileSync(file, waiting.map((line) => `${line}\n`).join(''));
    [waiting, waitingCharacters] = [[], 0];
  };
  return {
    add: (line) => {
      if (isClosed) throw new Error('The spool is closed.');
      waiting.push(line);
      waitingCharacters += line.length;
      if (waitingCharacters > IN_MEMORY_CHARACTERS) toFile();
    },
    *lines() {
      if (file !== null) yield* linesOfFile(file);
      yield* waiting;
    },
    close: () => {
      isClosed = true;
      if (file !== null) closeSync(file);
      [file, waiting] = [null, []];
    },
  };
}

function openNameless(folder: string): number {
  const path = join(folder, `.spool-${randomUUID()}`);
  const file = openSync(path, 'wx+', 0o600);
  unlinkSync(path);
  return file;
}

function* linesOfFile(file: number): Iterable<string> {
  const chunk = Buffer.alloc(READ_BYTES);
  let [position, rest] = [0, Buffer.alloc(0)];
  for (;;) {
    const length = readSync(file, chunk, 0, READ_BYTES, position);
    if (length === 0) return;
    position += length;
    let bytes = Buffer.concat([rest, chunk.subarray(0, length)]);
    for (let end = bytes.indexOf(LINE_END); end !== -1; end = bytes.indexOf(LINE_END)) {
      yield bytes.toString('utf8', 0, end);
      bytes = bytes.subarray(end + 1);
    }
    rest = bytes;
  }
}
