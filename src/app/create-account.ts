import { parseArgs } from 'node:util';
import { TOKEN_DAYS } from '../domain/account/account.js';
import { ROLES } from '../domain/account/role.js';
import { checkSignInName, normaliseSignInName } from '../domain/account/sign-in-name.js';
import type { Fault, Outcome } from '../domain/refusal/refusal.js';
import { findAccount } from '../storage/accounts/accounts.js';
import { listTeams, sitesOfTeam } from '../storage/providers/providers.js';
import {
  checkCredentials,
  createTeam,
  issueToken,
  openAccount,
  openProgramAccount,
} from '../usecases/accounts/provision.js';
import type { Belonging, Credentials } from '../usecases/accounts/provision.js';
import type { Context } from '../usecases/context.js';
import { askPassphrase } from './ask-passphrase.js';
import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { commandRefused, runCommand } from './run-command.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const USAGE = `Creates an account of a team: of a person who signs in by name and passphrase, or of a program with an API token.

  npm run account:create -- --team "Name of the team" --role lead --name "Name of the person" --sign-in h.turnstone
  npm run account:create -- --team "Name of the team" --role lead --name "Name of the program" --token

  --role ROLE      admin, clinician or lead
  --sign-in NAME   the name to sign in by; the passphrase is asked for, or read from the standard input
  --token          prints an API token, which is shown this once
  --days 90        how long the token is valid (1 to 366)
  --site "Name"    a site of the team, when the team is new; may be repeated`;

const DEFAULT_TOKEN_DAYS = '90';

interface Request {
  readonly team: string;
  readonly role: Exclude<Belonging['role'], 'commissioner'>;
  readonly name: string;
  readonly siteNames: readonly string[];
  /** Null for an account without a passphrase. */
  readonly signInName: string | null;
  /** Null where no token is asked for. */
  readonly tokenDays: number | null;
}

await runCommand(USAGE, async () => {
  const request = readArguments();
  if (request === null) return null;
  const { databaseFile } = readConfig(process.env);
  const credentials = request.signInName === null ? null : await askCredentials(request.signInName);
  const { connection, context } = await openRecord(databaseFile, SYSTEM_CLOCK);
  try {
    await create(context, request, credentials);
  } finally {
    await connection.close();
  }
});

/** Null where something is missing, blank or out of its range. */
function readArguments(): Request | null {
  const { values } = parseArgs({
    options: {
      team: { type: 'string', default: '' },
      role: { type: 'string' },
      name: { type: 'string', default: '' },
      site: { type: 'string', multiple: true, default: [] },
      'sign-in': { type: 'string' },
      token: { type: 'boolean', default: false },
      days: { type: 'string' },
    },
  });
  const role = ROLES.find((candidate) => candidate === values.role);
  const [team = '', name = '', ...siteNames] = [values.team, values.name, ...values.site].map((text) =>
    text.trim(),
  );
  if (role === undefined || role === 'commissioner' || [team, name, ...siteNames].includes('')) return null;
  const signInName = values['sign-in'] ?? null;
  if (!values.token && (signInName === null || values.days !== undefined)) return null;
  const days = daysOf(values.days ?? DEFAULT_TOKEN_DAYS);
  if (days === null) return null;
  return {
    team,
    role,
    name,
    siteNames: [...new Set(siteNames)],
    signInName,
    tokenDays: values.token ? days : null,
  };
}

function daysOf(text: string): number | null {
  const days = /^\d{1,3}$/.test(text) ? Number(text) : 0;
  return days >= TOKEN_DAYS.min && days <= TOKEN_DAYS.max ? days : null;
}

async function create(context: Context, request: Request, credentials: Credentials | null): Promise<void> {
  const { team, role, name, siteNames, tokenDays } = request;
  if (credentials !== null) await requireFreeName(context, credentials);
  const teamId = await findOrCreateTeam(context, team, siteNames);
  const account = { displayName: name, belonging: { role, teamId } };
  const accountId =
    credentials === null
      ? await openProgramAccount(context, account)
      : valueOf(await openAccount(context, { ...account, ...credentials }));
  console.log(`Account of ${name}, ${role} of ${team}.`);
  if (credentials !== null) console.log(`Sign in as ${normaliseSignInName(credentials.signInName)}.`);
  if (tokenDays === null) return;
  const expiresAt = SYSTEM_CLOCK.inDays(tokenDays);
  const token = await issueToken(context, { accountId, role, tokenName: 'first token', expiresAt });
  console.log(`The token is shown this once, and is valid for ${tokenDays} days:\n${token}`);
}

/** The name and the passphrase that is asked for, held to the rules before anything is opened or made. */
async function askCredentials(signInName: string): Promise<Credentials> {
  // A name that may not be used is refused before anybody has typed a passphrase for it.
  refuse(checkSignInName('', normaliseSignInName(signInName)));
  const credentials = { signInName, passphrase: await askPassphrase() };
  refuse(checkCredentials(credentials));
  return credentials;
}

function refuse(faults: readonly Fault[]): void {
  const [fault] = faults;
  if (fault !== undefined) throw commandRefused(`${fault.message} Nothing was made.`);
}

async function requireFreeName(context: Context, { signInName }: Credentials): Promise<void> {
  const name = normaliseSignInName(signInName);
  if ((await findAccount(context.reader, { signInName: name })) === null) return;
  throw commandRefused(`The sign-in name ${name} is taken. Nothing was made.`);
}

function valueOf(outcome: Outcome<string>): string {
  if (outcome.kind === 'done') return outcome.value;
  throw commandRefused(`The account was not made: ${outcome.refusal.code}.`);
}

async function findOrCreateTeam(
  context: Context,
  team: string,
  siteNames: readonly string[],
): Promise<string> {
  const known = (await listTeams(context.db)).find((candidate) => candidate.name === team);
  if (known !== undefined) {
    const sites = (await sitesOfTeam(context.db, known.id)).map((site) => site.name);
    const unknown = siteNames.find((name) => !sites.includes(name));
    if (unknown === undefined) return known.id;
    throw commandRefused(
      `The team "${team}" has no site "${unknown}", and --site adds none. Nothing was made.`,
    );
  }
  if (siteNames.length === 0) {
    throw commandRefused(`There is no team "${team}". Name at least one --site to create it.`);
  }
  return (await createTeam(context, { name: team, kind: 'live', siteNames })).teamId;
}
