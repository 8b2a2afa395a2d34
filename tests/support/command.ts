import { execFile } from 'node:child_process';
import { expect } from 'vitest';
import { fileURLToPath } from 'node:url';
import { compiledCommand } from './compiled-command.js';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** How a command ended. */
export interface Ended {
  readonly code: number;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the file of an npm script, compiled, in a process of its own. @param input its standard input */
export function runCommandFile(
  file: string,
  args: readonly string[] = [],
  environment: Readonly<Record<string, string>> = {},
  input = '',
): Promise<Ended> {
  const [node, compiled] = compiledCommand(file.replace(/\.ts$/, ''));
  return runProgram(node, [compiled, ...args], environment, input);
}

/** Runs a program in a process of its own, at the top of the project. */
export function runProgram(
  program: string,
  args: readonly string[],
  environment: Readonly<Record<string, string>>,
  input = '',
): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const env = { ...process.env, ...environment };
    const child = execFile(program, args, { cwd: ROOT, env }, (error, stdout, stderr) => {
      const code = error === null ? 0 : error.code;
      if (typeof code === 'number') resolve({ code, stdout, stderr });
      else reject(error ?? new Error('The command did not end.'));
    });
    // A command that reads nothing may have ended before this is written.
    child.stdin?.on('error', () => {});
    child.stdin?.end(input);
  });
}

/** Told in words, without the inside of the program. */
export function expectRefused({ code, stdout, stderr }: Ended, words: RegExp): void {
  expect(stderr).toMatch(words);
  expect([code, stdout]).toEqual([1, '']);
  expect(stderr.trim().split('\n')).toHaveLength(1);
}

/** Shown how the command is called. */
export function expectUsage({ code, stdout, stderr }: Ended, command: string): void {
  expect(stderr).toContain(`npm run ${command}`);
  expect([code, stdout]).toEqual([2, '']);
  expect(stderr).not.toMatch(/\bat .*\.ts:\d/);
}
