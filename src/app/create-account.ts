import { parseArgs } from 'node:util';
import { ROLES } from '../domain/account/role.js';
import { listTeams, sitesOfTeam } from '../storage/providers/providers.js';
import { createAccount, createTeam } from '../usecases/accounts/provision.js';
import type { Belonging } from '../usecases/accounts/provision.js';
import type { Context } from '../usecases/context.js';
import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { commandRefused, runCommand } from './run-command.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const USAGE = `Creates an account of a team, with a token that is shown once.

  npm run account:create -- --team "Name of the team" --role lead --name "Name of the person"

  --role ROLE      admin, clinician or lead
  --site "Name"    a site of the team, when the team is new; may be repeated
  --days 90        how long the token is valid (1 to 366)`;

const TOKEN_DAYS = '90';

interface Request {
  readonly team: string;
  readonly role: Exclude<Belonging['role'], 'commissioner'>;
  readonly name: string;
  readonly siteNames: readonly string[];
  readonly days: number;
}

await runCommand(USAGE, async () => {
  const request = readArguments();
  if (request === null) return null;
  const { databaseFile } = readConfig(process.env);
  const { connection, context } = await openRecord(databaseFile, SYSTEM_CLOCK);
  try {
    await create(context, request);
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
      days: { type: 'string', default: TOKEN_DAYS },
    },
  });
  const role = ROLES.find((candidate) => candidate === values.role);
  const [team = '', name = '', ...siteNames] = [values.team, values.name, ...values.site].map((text) =>
    text.trim(),
  );
  if (role === undefined || role === 'commissioner' || [team, name, ...siteNames].includes('')) return null;
  if (!/^\d{1,3}$/.test(values.days) || Number(values.days) < 1 || Number(values.days) > 366) return null;
  return { team, role, name, siteNames: [...new Set(siteNames)], days: Number(values.days) };
}

async function create(context: Context, { team, role, name, siteNames, days }: Request): Promise<void> {
  const teamId = await findOrCreateTeam(context, team, siteNames);
  const { token } = await createAccount(context, {
    displayName: name,
    belonging: { role, teamId },
    tokenName: 'first token',
    expiresAt: SYSTEM_CLOCK.inDays(days),
  });
  console.log(
    `Account of ${name}, ${role} of ${team}. The token is shown this once, and is valid for ${days} days:`,
  );
  console.log(token);
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
