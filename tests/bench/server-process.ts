import { fork } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';

/** A server in a process of its own. */
export interface ServerProcess {
  readonly port: number;
  /** Processor time that it has used, in milliseconds. */
  readonly cpuMs: () => Promise<number>;
  readonly stop: () => Promise<void>;
}

const START_LIMIT_MS = 30_000;

/**
 * Starts a compiled server and waits until it listens on 127.0.0.1.
 *
 * @param module path of the compiled module
 * @param args what the module is told on its command line
 * @throws Error when it ends or says nothing within half a minute
 */
export async function startServer(module: string, args: readonly string[]): Promise<ServerProcess> {
  const child = fork(module, [...args], {
    execArgv: execArgv(),
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  const port = await new Promise<number>((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error('The server did not start.')), START_LIMIT_MS);
    child.once('message', (message) => {
      clearTimeout(timer);
      resolve(Number(message));
    });
    child.once('exit', (code) => reject(new Error(`The server ended with code ${String(code)}.`)));
  });
  return { port, cpuMs: () => cpuMs(child), stop: () => stop(child) };
}

async function cpuMs(child: ChildProcess): Promise<number> {
  const answered = new Promise<number>((resolve) =>
    child.once('message', (message) => resolve(Number(message))),
  );
  child.send('cpu');
  return answered;
}

/** As `npm start` has it: room for the rows of a report, which are soon done with. */
const SERVICE_OPTION = '--max-semi-space-size=64';

/** What else Node is told, for a look at where the time goes, such as `--cpu-prof`. */
function execArgv(): string[] {
  const others = (process.env['BENCH_SERVER_OPTIONS'] ?? '').split(' ').filter((option) => option !== '');
  return [SERVICE_OPTION, ...others];
}

async function stop(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null) return;
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  // The servers close when their parent hangs up, so that none outlives a run that was broken off.
  child.disconnect();
  await ended;
}
