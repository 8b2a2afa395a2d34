import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** What npm puts in front of a script's own programs. */
const TSX = join(ROOT, 'node_modules', '.bin', 'tsx');

/** How a command ended. */
export interface Ended {
  readonly code: number;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the file of an npm script as the script does, in a process of its own. */
export function runCommandFile(
  file: string,
  args: readonly string[] = [],
  environment: Readonly<Record<string, string>> = {},
): Promise<Ended> {
  return runProgram(TSX, [`src/app/${file}`, ...args], environment);
}

/** Runs a program in a process of its own, at the top of the project. */
export function runProgram(
  program: string,
  args: readonly string[],
  environment: Readonly<Record<string, string>>,
): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const env = { ...process.env, ...environment };
    execFile(program, args, { cwd: ROOT, env }, (error, stdout, stderr) => {
      const code = error === null ? 0 : error.code;
      if (typeof code === 'number') resolve({ code, stdout, stderr });
      else reject(error ?? new Error('The command did not end.'));
    });
  });
}
