import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';

/** The service in a process of its own. */
export interface ServiceProcess {
  readonly pid: number;
  /** Such as `http://127.0.0.1:40123/api/v1`. */
  readonly url: string;
  readonly port: number;
  /** What it has written to its log so far. */
  readonly log: () => string;
  /** Sends a signal and waits until it has ended; gives how it did. */
  readonly end: (signal: 'SIGTERM' | 'SIGKILL') => Promise<Ending>;
  /** Waits until it has ended, whoever ends it. */
  readonly ended: Promise<Ending>;
}

export interface Ending {
  readonly code: number | null;
  readonly signal: string | null;
}

/** How a process that does not serve ended. */
export interface Refusal extends Ending {
  readonly stderr: string;
}

const START_LIMIT_MS = 30_000;

/**
 * Starts the service on a free port of 127.0.0.1.
 *
 * @param command the program with its arguments: Node with the compiled service, or something that leads to it
 * @throws Error with what it said when it does not listen
 */
export async function startService(
  command: readonly [string, ...string[]],
  environment: Readonly<Record<string, string>>,
): Promise<ServiceProcess> {
  const { child, output, ended } = start(command, environment);
  const port = await new Promise<number>((resolve, reject) => {
    const timer = setTimeout(() => {
      child.kill('SIGKILL');
      reject(new Error(`The service did not start: ${output.text}`));
    }, START_LIMIT_MS);
    child.stdout?.on('data', () => {
      const found = /listening at http:\/\/127\.0\.0\.1:(\d+)/.exec(output.text);
      if (found === null) return;
      clearTimeout(timer);
      resolve(Number(found[1]));
    });
    void ended.then(({ code }) => {
      clearTimeout(timer);
      reject(new Error(`The service ended with code ${String(code)}: ${output.text}${output.errors}`));
    });
  });
  return {
    pid: child.pid ?? 0,
    url: `http://127.0.0.1:${port}/api/v1`,
    port,
    log: () => output.text,
    end: (signal) => {
      child.kill(signal);
      return ended;
    },
    ended,
  };
}

/** Starts the service and kills it so many milliseconds later, however far it has come. */
export async function killOnTheWayUp(
  command: readonly [string, ...string[]],
  environment: Readonly<Record<string, string>>,
  afterMs: number,
): Promise<Ending> {
  const { child, ended } = start(command, environment);
  const timer = setTimeout(() => child.kill('SIGKILL'), afterMs);
  const ending = await ended;
  clearTimeout(timer);
  return ending;
}

/** Runs what is expected to refuse to serve, and gives how it ended. */
export async function runRefused(
  command: readonly [string, ...string[]],
  environment: Readonly<Record<string, string>>,
): Promise<Refusal> {
  const { child, output, ended } = start(command, environment);
  const timer = setTimeout(() => child.kill('SIGKILL'), START_LIMIT_MS);
  const ending = await ended;
  clearTimeout(timer);
  return { ...ending, stderr: output.errors };
}

function start(
  [program, ...args]: readonly [string, ...string[]],
  environment: Readonly<Record<string, string>>,
): {
  readonly child: ChildProcess;
  readonly output: { text: string; errors: string };
  readonly ended: Promise<Ending>;
} {
  const env = { ...process.env, TIDEMARK_PORT: '0', ...environment };
  const child = spawn(program, args, { env, stdio: ['ignore', 'pipe', 'pipe'] });
  const output = { text: '', errors: '' };
  child.stdout.on('data', (chunk: Buffer) => (output.text += chunk.toString()));
  child.stderr.on('data', (chunk: Buffer) => (output.errors += chunk.toString()));
  const ended = new Promise<Ending>((resolve) => {
    child.once('close', (code, signal) => resolve({ code, signal }));
  });
  return { child, output, ended };
}
