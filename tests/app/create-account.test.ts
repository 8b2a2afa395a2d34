import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildApp } from '../../src/app/build-app.js';
import { openRecord } from '../../src/app/open-record.js';
import { SYSTEM_CLOCK } from '../../src/app/system-clock.js';
import type { Context } from '../../src/usecases/context.js';
import { signIn } from '../../src/usecases/accounts/sign-in.js';
import { whoseSession } from '../../src/usecases/accounts/session.js';
import { expectRefused, expectUsage, runCommandFile } from '../support/command.js';
import type { Ended } from '../support/command.js';
import { PASSPHRASE, valueOf } from '../support/people.js';
import { itemsOf } from '../support/response.js';
import { clientOf } from '../support/start-app.js';

const TEAM = ['--team', 'Marram Coast PR team'] as const;
const SITES = ['--site', 'Dune Hall', '--site', 'Saltmarsh Centre'] as const;
const LEAD = ['--role', 'lead', '--name', 'Heather Turnstone'] as const;
const SIGN_IN = ['--sign-in', 'H.Turnstone'] as const;

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tidemark-accounts-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

const at = (name: string): string => join(folder, name);
const run = (args: readonly string[], databaseFile: string, input = ''): Promise<Ended> =>
  runCommandFile('create-account.ts', args, { TIDEMARK_DB: databaseFile }, input);

/** What a record holds, read while nobody else has it open. */
async function inRecord<Result>(file: string, read: (context: Context) => Promise<Result>): Promise<Result> {
  const { connection, context } = await openRecord(file, SYSTEM_CLOCK);
  try {
    return await read(context);
  } finally {
    await connection.close();
  }
}

const namesIn = (file: string, table: 'team' | 'site') =>
  inRecord(file, async ({ db }) =>
    (await db.selectFrom(table).select('name').orderBy('name').execute()).map(({ name }) => name),
  );
const signsIn = (context: Context, passphrase: string) =>
  signIn(context, { signInName: 'h.turnstone', passphrase, address: null });

describe('account:create for a person', () => {
  it('makes a team with its sites and a lead, who signs in by the passphrase of the standard input', async () => {
    const file = at('person.sqlite');
    const made = await run([...TEAM, ...SITES, ...LEAD, ...SIGN_IN], file, `${PASSPHRASE}\n`);
    expect(made).toEqual({
      code: 0,
      stdout: 'Account of Heather Turnstone, lead of Marram Coast PR team.\nSign in as h.turnstone.\n',
      stderr: '',
    });
    expect(await namesIn(file, 'site')).toEqual(['Dune Hall', 'Saltmarsh Centre']);
    expect(readFileSync(file).includes(PASSPHRASE)).toBe(false);
    await inRecord(file, async (context) => {
      const { sessionSecret } = valueOf(await signsIn(context, PASSPHRASE));
      expect(await whoseSession(context, sessionSecret)).toMatchObject({ actor: { role: 'lead' } });
      const told = await context.db.selectFrom('audit_event').select('action').orderBy('sequence').execute();
      expect(told.map(({ action }) => action)).toEqual(['account-created', 'signed-in']);
    });
    const again = await run([...TEAM, '--role', 'admin', '--name', 'B', ...SIGN_IN], file, `${PASSPHRASE}\n`);
    expectRefused(again, /The sign-in name h\.turnstone is taken\. Nothing was made\./);
  });

  it.each([
    ['a passphrase that is too short', 'short\n', /Use 12 to 128 characters\. Nothing was made\./],
    ['a common one', 'password1234\n', /among the first to be guessed.* Nothing was made\./],
    ['none', '', /There is no passphrase on the standard input\. Nothing was made\./],
  ])('refuses %s and makes nothing', async (_name, input, words) => {
    const file = at('refused.sqlite');
    expectRefused(await run([...TEAM, ...SITES, ...LEAD, ...SIGN_IN], file, input), words);
    expect(existsSync(file)).toBe(false);
  });

  it('refuses a sign-in name that may not be used, before it asks for a passphrase', async () => {
    const refused = await run([...TEAM, ...SITES, ...LEAD, '--sign-in', 'h turnstone'], at('name.sqlite'));
    expectRefused(refused, /Use 3 to 80 letters a to z/);
  });

  it('asks on a terminal, twice, and shows nothing of what is typed', async () => {
    const file = at('terminal.sqlite');
    const screen = await onTerminal([...TEAM, ...SITES, ...LEAD, ...SIGN_IN], file, [PASSPHRASE, PASSPHRASE]);
    expect(screen).toContain('Sign in as h.turnstone.');
    expect(screen).not.toContain('sandpiper');
    await inRecord(file, async (context) => valueOf(await signsIn(context, PASSPHRASE)));
  });

  it('makes nothing where the two that were typed differ', async () => {
    const file = at('differ.sqlite');
    const typed = [PASSPHRASE, `${PASSPHRASE}s`];
    const screen = await onTerminal([...TEAM, ...SITES, ...LEAD, ...SIGN_IN], file, typed);
    expect(screen).toContain('The two passphrases differ. Nothing was made.');
    expect(screen).not.toContain('sandpiper');
    expect(existsSync(file)).toBe(false);
  });
});

describe('account:create with a token', () => {
  it('prints it once, and it opens the service in its role', async () => {
    const file = at('tokens.sqlite');
    const first = await run([...TEAM, ...SITES, ...LEAD, '--token'], file);
    expect(first).toMatchObject({ code: 0, stderr: '' });
    const [account, words, token = '', ...rest] = first.stdout.trimEnd().split('\n');
    expect(account).toBe('Account of Heather Turnstone, lead of Marram Coast PR team.');
    expect(words).toMatch(/shown this once, and is valid for 90 days/);
    expect(token).toMatch(/^tdm_[\w-]{43}$/);
    expect(rest).toEqual([]);
    const admin = [...TEAM, '--role', 'admin', '--name', 'Admin', '--token', '--days', '1'];
    const second = await run([...admin, '--sign-in', 't.dunlin'], file, PASSPHRASE);
    expect(second).toMatchObject({ code: 0, stderr: '' });
    expect(await namesIn(file, 'team')).toEqual(['Marram Coast PR team']);
    expect(readFileSync(file).includes(token)).toBe(false);

    const record = await openRecord(file, SYSTEM_CLOCK);
    const app = await buildApp(record.context, 'silent');
    await app.ready();
    const lead = clientOf(app, token);
    const names = itemsOf(await lead.get('/api/v1/sites')).map(({ name }) => name);
    expect(names.sort()).toEqual(['Dune Hall', 'Saltmarsh Centre']);
    expect((await lead.get('/api/v1/reports/quarterly?period=2025-26')).status).toBe(200);
    const asAdmin = clientOf(app, second.stdout.trimEnd().split('\n').at(-1) ?? '');
    expect((await asAdmin.get('/api/v1/patients')).status).toBe(200);
    expect((await asAdmin.get('/api/v1/reports/quarterly?period=2025-26')).status).toBe(403);
    const signInNames = itemsOf(await lead.get('/api/v1/accounts')).map(({ signInName }) => signInName);
    expect(signInNames).toEqual(['t.dunlin', null]);
    await app.close();
    await record.connection.close();
  });
});

describe('account:create', () => {
  it('shows how it is called when something is missing or out of its range, and makes nothing', async () => {
    const file = at('none.sqlite');
    const whole = ['--team', 'A', '--site', 'B', '--name', 'C'];
    const calls = [
      ['--team', ' ', '--site', 'B', '--name', 'C', '--role', 'lead', '--token'],
      [...whole, '--role', 'commissioner', '--token'],
      [...whole, '--role', 'lead', '--token', '--days', '367'],
      [...whole, '--role', 'lead', '--token', '--sites', 'D'],
      // Neither a way to sign in nor a token; days of no token; a passphrase in the arguments.
      [...whole, '--role', 'lead'],
      [...whole, '--role', 'lead', ...SIGN_IN, '--days', '30'],
      [...whole, '--role', 'lead', ...SIGN_IN, '--passphrase', PASSPHRASE],
    ];
    const ended = await Promise.all(calls.map((args) => run(args, file, PASSPHRASE)));
    for (const each of ended) expectUsage(each, 'account:create');
    expect(existsSync(file)).toBe(false);
  });

  it('refuses a team that it does not know and may not make', async () => {
    const file = at('unknown.sqlite');
    const account = ['--team', 'No such team', '--role', 'lead', '--name', 'A Lead', '--token'];
    expectRefused(await run(account, file), /no team "No such team".*--site/);
    expect(await namesIn(file, 'team')).toEqual([]);
  });
});

/**
 * Runs the command on a terminal of its own, and types a line after each prompt.
 *
 * @returns all that the terminal showed
 */
function onTerminal(
  args: readonly string[],
  databaseFile: string,
  lines: readonly string[],
): Promise<string> {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const quoted = ['node_modules/.bin/tsx', 'src/app/create-account.ts', ...args].map((part) => `'${part}'`);
  const child = spawn('script', ['--quiet', '--command', quoted.join(' '), '/dev/null'], {
    cwd: root,
    env: { ...process.env, TIDEMARK_DB: databaseFile },
  });
  return new Promise((resolve, reject) => {
    let screen = '';
    let typed = 0;
    child.stdout.on('data', (part: Buffer) => {
      screen += part.toString('utf8');
      const prompts = screen.match(/not shown\): |once more: /g)?.length ?? 0;
      if (prompts <= typed) return;
      child.stdin.write(`${lines[typed] ?? ''}\r`);
      typed = prompts;
    });
    child.on('error', reject);
    child.on('close', () => resolve(screen));
  });
}
