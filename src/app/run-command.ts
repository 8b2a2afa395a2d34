import { existsSync } from 'node:fs';

/** What a command could not do, in words for the operator; anything else that is thrown is a fault of the program. */
const REFUSED = 'CommandRefused';

/** An error that tells the operator what to do otherwise. @param cause what went wrong underneath, where something did */
export function commandRefused(message: string, cause?: unknown): Error {
  return Object.assign(new Error(message, { cause }), { name: REFUSED });
}

/**
 * Runs a command, or says how it is called where `--help` asks: what it refuses is told in one line, with exit code 1; wrong arguments with the usage and exit code 2.
 *
 * @param usage how the command is called
 * @param work gives null where the arguments are not what the usage says
 */
export async function runCommand(
  usage: string,
  work: () => Promise<void | null> | void | null,
): Promise<void> {
  if (process.argv.slice(2).some((argument) => argument === '--help' || argument === '-h')) {
    console.log(usage);
    return;
  }
  try {
    if ((await work()) !== null) return;
    console.error(usage);
    process.exitCode = 2;
  } catch (error) {
    if (isWrongArgument(error)) {
      // The program's own sentence; what follows it is advice to programmers.
      const [sentence = ''] = error.message.split('. To specify');
      console.error(`${sentence}\n\n${usage}`);
      process.exitCode = 2;
      return;
    }
    if (!(error instanceof Error) || error.name !== REFUSED) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}

/** @throws the refusal when there is no file of the record, which a command must not make unasked */
export function requireRecord(databaseFile: string): void {
  if (!existsSync(databaseFile)) throw commandRefused(`There is no record at ${databaseFile} (TIDEMARK_DB).`);
}

/** What `parseArgs` throws on an option that there is not, or one without its value. */
function isWrongArgument(error: unknown): error is Error {
  return error instanceof Error && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS_');
}
