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
/** What is gathered for the file once there is one: lines that wait for long are dear to clear away. */
const GATHERED_CHARACTERS = 64 * 1024;
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
      if (waitingCharacters > (file === null ? IN_MEMORY_CHARACTERS : GATHERED_CHARACTERS)) toFile();
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
  let bytes = Buffer.alloc(READ_BYTES);
  let [position, filled] = [0, 0];
  for (;;) {
    // A line that is longer than what is read at once.
    if (filled === bytes.length) bytes = Buffer.concat([bytes], 2 * filled);
    const length = readSync(file, bytes, filled, bytes.length - filled, position);
    if (length === 0) return;
    [position, filled] = [position + length, filled + length];
    const read = bytes.subarray(0, filled);
    let start = 0;
    for (let end = read.indexOf(LINE_END); end !== -1; end = read.indexOf(LINE_END, start)) {
      yield read.toString('utf8', start, end);
      start = end + 1;
    }
    read.copy(bytes, 0, start);
    filled -= start;
  }
}
