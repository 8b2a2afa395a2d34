import { parseArgs } from 'node:util';
import { ROLES } from '../domain/account/role.js';
import { listTeams } from '../storage/providers/providers.js';
import { createAccount, createTeam } from '../usecases/accounts/provision.js';
import type { Context } from '../usecases/context.js';
import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const USAGE = `Creates an account of a team, with a token that is shown once.

  npm run account:create -- --team "Name of the team" --role lead --name "Name of the person"

  --site "Name"    a site of the team, when the team is new; may be repeated
  --days 90        how long the token is valid (1 to 366)`;

const TOKEN_DAYS = 90;

const { values } = parseArgs({
  options: {
    team: { type: 'string' },
    role: { type: 'string' },
    name: { type: 'string' },
    site: { type: 'string', multiple: true },
    days: { type: 'string' },
  },
});
const role = ROLES.find((candidate) => candidate === values.role);
const days = Number(values.days ?? TOKEN_DAYS);
const { team, name } = values;
if (
  team === undefined ||
  name === undefined ||
  role === undefined ||
  role === 'commissioner' ||
  !isDays(days)
) {
  console.error(USAGE);
  process.exit(2);
}
const { connection, context } = await openRecord(readConfig(process.env).databaseFile, SYSTEM_CLOCK);
const teamId = await findOrCreateTeam(context, team, values.site ?? []);
if (teamId === null) {
  console.error(`There is no team "${team}". Name at least one --site to create it.`);
  process.exitCode = 1;
} else {
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
await connection.close();

async function findOrCreateTeam(
  context: Context,
  teamName: string,
  siteNames: readonly string[],
): Promise<string | null> {
  const known = (await listTeams(context.db)).find((candidate) => candidate.name === teamName);
  if (known !== undefined) return known.id;
  if (siteNames.length === 0) return null;
  return (await createTeam(context, { name: teamName, kind: 'live', siteNames })).teamId;
}

function isDays(value: number): boolean {
  return Number.isInteger(value) && value >= 1 && value <= 366;
}
