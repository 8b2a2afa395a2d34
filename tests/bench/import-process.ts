import { readFileSync } from 'node:fs';
import { openRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import type { Outcome } from '../../src/domain/refusal/refusal.js';
import { createAccount, createTeam } from '../../src/usecases/accounts/provision.js';
import type { TeamMember } from '../../src/usecases/context.js';
import { commitImport } from '../../src/usecases/imports/commit-import.js';
import { takeFile } from '../../src/usecases/imports/keep-import.js';
import { viewOf } from '../../src/usecases/imports/view-import.js';
import { BENCH_INSTANT } from './whole-assessment.js';

/** What bringing one sheet in took. */
export interface ImportRun {
  /** Every row judged, nothing written. */
  readonly judgedMs: number;
  /** Of it, time of the processor, which does not grow where others use the machine. */
  readonly judgedProcessorMs: number;
  /** Every row brought in, in one transaction on the disk. */
  readonly broughtInMs: number;
  readonly broughtInProcessorMs: number;
  readonly rowsBroughtIn: number;
  /** Most memory that the process held since it began, pages of files included. */
  readonly mostMemoryMb: number;
}

const [, , databaseFile = '', ...sheets] = process.argv;
const { connection, context } = await openRecord(databaseFile, clockAt(BENCH_INSTANT));
const { teamId } = await createTeam(context, {
  name: 'Marram Coast PR team',
  kind: 'demo',
  siteNames: ['Dune Hall'],
});
const { accountId } = await createAccount(context, {
  displayName: 'Bench lead',
  belonging: { role: 'lead', teamId },
  tokenName: 'bench',
  expiresAt: '2100-01-01T00:00:00.000Z',
});
const lead: TeamMember = { accountId, role: 'lead', teamId };
const runs: ImportRun[] = [];
for (const sheet of sheets) runs.push(await bringIn(readFileSync(sheet)));
await connection.close();
if (process.send === undefined) console.log(runs);
else {
  process.send(runs);
  process.disconnect();
}

async function bringIn(content: Buffer): Promise<ImportRun> {
  const begunAt = performance.now();
  const processor = processorClock();
  const judged = valueOf(await takeFile(context, lead, { name: 'sheet.csv', content }));
  const judgedAt = performance.now();
  const judgedProcessorMs = processor();
  if (judged.judgement === null) {
    throw new Error(judged.sheet?.questions.map(({ message }) => message).join(' ') ?? 'There is no sheet.');
  }
  const wrong = judged.judgement.rows.find(({ faults }) => faults.length > 0);
  if (wrong !== undefined) throw new Error(JSON.stringify(wrong));
  const options = {
    rows: 'all-or-none',
    confirmsUnusual: false,
    basedOn: [judged.version],
    isAtOnce: true,
  } as const;
  processor();
  valueOf(await commitImport(context, lead, judged.id, options));
  const broughtAt = performance.now();
  const broughtInProcessorMs = processor();
  const brought = valueOf(await viewOf(context, lead, judged.id));
  const counts = brought.judgement?.counts;
  return {
    judgedMs: judgedAt - begunAt,
    broughtInMs: broughtAt - judgedAt,
    judgedProcessorMs,
    broughtInProcessorMs,
    rowsBroughtIn: (counts?.new ?? 0) + (counts?.added ?? 0),
    mostMemoryMb: process.resourceUsage().maxRSS / 1024,
  };
}

/** Gives the time that the processor has worked for this process since it was last asked, in ms. */
function processorClock(): () => number {
  let before = process.cpuUsage();
  return () => {
    const used = process.cpuUsage(before);
    before = process.cpuUsage();
    return (used.user + used.system) / 1000;
  };
}

function valueOf<Value>(outcome: Outcome<Value>): Value {
  if (outcome.kind === 'refused') throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value;
}
