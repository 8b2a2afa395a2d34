import { createInterface } from 'node:readline/promises';
import { Writable } from 'node:stream';
import { commandRefused } from './run-command.js';

/**
 * Asks the operator for a passphrase: on a terminal twice and without showing what is typed, else one line of the
 * standard input. It is never an argument, which other users of the machine could read.
 *
 * @throws the refusal of a command where nothing comes, or the two differ
 */
export async function askPassphrase(): Promise<string> {
  if (!process.stdin.isTTY) return readLine();
  const passphrase = await askHidden('Passphrase (it is not shown): ');
  const again = await askHidden('The same once more: ');
  if (passphrase !== again) throw commandRefused('The two passphrases differ. Nothing was made.');
  return passphrase;
}

async function readLine(): Promise<string> {
  const lines = createInterface({ input: process.stdin });
  try {
    for await (const line of lines) return line;
  } finally {
    lines.close();
  }
  throw commandRefused('There is no passphrase on the standard input. Nothing was made.');
}

async function askHidden(prompt: string): Promise<string> {
  const nowhere = new Writable({ write: (_text, _encoding, done) => done() });
  const line = createInterface({ input: process.stdin, output: nowhere, terminal: true });
  // The line editor has taken the echo away before anybody is asked to type.
  process.stderr.write(prompt);
  const stopped = new Promise<never>((_resolve, reject) => {
    line.once('close', () => reject(commandRefused('No passphrase was given. Nothing was made.')));
  });
  try {
    return await Promise.race([line.question(''), stopped]);
  } finally {
    line.close();
    process.stderr.write('\n');
  }
}
