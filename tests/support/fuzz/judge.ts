import type { LightMyRequestResponse } from 'fastify';
import type { MadeRequest } from './request-maker.js';

/** What the inside of the program, or of its libraries, looks like. */
const INSIDE = [
  /\bat (?:async )?[\w.<>$ ]*\(?(?:file:|node:|\/)[^\s)]*:\d+/,
  /node_modules/,
  /\.(?:ts|js|mjs|cjs):\d+/,
  /\b(?:TypeError|RangeError|ReferenceError|SyntaxError|SqliteError|ZodError|FastifyError)\b/,
  /SQLITE_[A-Z]|\bFST_ERR_|\bERR_[A-Z]/,
  /\b(?:near|syntax error|no such (?:table|column)|UNIQUE constraint|FOREIGN KEY constraint|CHECK constraint)\b.*(?:syntax|table|column|failed)/,
  /better-sqlite3|kysely/i,
];

/** Texts and ids of another team, which no answer may hold. */
export interface Foreign {
  readonly texts: readonly string[];
  readonly ids: readonly string[];
}

/** What is wrong with an answer, in words; empty where nothing is. */
export function faultsOf(
  request: MadeRequest,
  response: LightMyRequestResponse,
  foreign: Foreign,
): readonly string[] {
  const { statusCode, body, headers } = response;
  const faults: string[] = [];
  if (statusCode >= 500) faults.push(`It was answered by ${statusCode}.`);
  if (request.kind !== 'hostile' && !request.operation.statuses.has(statusCode)) {
    faults.push(`The document does not declare ${statusCode} for ${request.operation.operationId}.`);
  }
  if (statusCode >= 400) {
    if (headers['content-type'] !== 'application/problem+json') {
      faults.push(`A refusal came as ${String(headers['content-type'])}.`);
    }
    if (body.length > 16_384) faults.push(`A refusal has ${body.length} characters.`);
    // An answer that was given may hold what somebody typed; a refusal is the service's own words.
    for (const inside of INSIDE) {
      const found = inside.exec(body);
      if (found !== null) faults.push(`It shows the inside: ${found[0]}`);
    }
  }
  const asked = `${request.url} ${request.body?.toString() ?? ''}`;
  for (const text of foreign.texts) if (body.includes(text)) faults.push(`It shows another team's ${text}.`);
  // The trail repeats what this team has asked for, and it has asked for these ids.
  const isTrail = request.operation.operationId === 'listAuditEvents';
  for (const id of isTrail ? [] : foreign.ids) {
    if (body.includes(id) && !asked.includes(id)) faults.push(`It shows another team's id ${id}.`);
  }
  return faults;
}
