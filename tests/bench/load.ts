import { Agent, request } from 'node:http';

/** A request that is to be sent once. */
export interface Shot {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | null;
  /** Any other status ends the run: a refused request is no measurement. */
  readonly expectedStatus: number;
}

/** What came back, and how long that took. */
export interface Answer {
  readonly body: string;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly ms: number;
}

/** The outcome of sending many requests. */
export interface LoadResult {
  readonly perSecond: number;
  readonly latenciesMs: readonly number[];
}

const TIMEOUT_MS = 10_000;

/** Connections that stay open, to one server on this machine. */
export function openClient(port: number, connections: number) {
  const agent = new Agent({ keepAlive: true, maxSockets: connections });
  return {
    send: (shot: Shot): Promise<Answer> => send(agent, port, shot),
    /** Sends every request once, on all connections at the same time, each next as soon as one is answered. */
    sendAll: async (shots: readonly Shot[]): Promise<LoadResult> => {
      const latenciesMs: number[] = [];
      const queue = shots.values();
      const worker = async (): Promise<void> => {
        for (const shot of queue) latenciesMs.push((await send(agent, port, shot)).ms);
      };
      const startedAt = performance.now();
      await Promise.all(Array.from({ length: connections }, worker));
      return { perSecond: (shots.length * 1000) / (performance.now() - startedAt), latenciesMs };
    },
    close: (): void => agent.destroy(),
  };
}

export type Client = ReturnType<typeof openClient>;

function send(agent: Agent, port: number, shot: Shot): Promise<Answer> {
  const { method, path, body } = shot;
  const headers =
    body === null ? shot.headers : { ...shot.headers, 'content-length': String(Buffer.byteLength(body)) };
  return new Promise((resolve, reject) => {
    const startedAt = performance.now();
    const sent = request(
      { host: '127.0.0.1', port, agent, method, path, headers, timeout: TIMEOUT_MS },
      (response) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('end', () => {
          const text = Buffer.concat(chunks).toString();
          if (response.statusCode !== shot.expectedStatus) {
            reject(new Error(`${method} ${path} answered ${String(response.statusCode)}: ${text}`));
            return;
          }
          resolve({ body: text, headers: response.headers, ms: performance.now() - startedAt });
        });
        response.on('error', reject);
      },
    );
    sent.on('timeout', () => sent.destroy(new Error(`${method} ${path} was not answered in time.`)));
    sent.on('error', reject);
    sent.end(body ?? undefined);
  });
}
