import type { Role } from '../src/domain/account/role.js';
import {
  createCommissioner,
  createTeam,
  issueToken,
  openAccount,
} from '../src/usecases/accounts/provision.js';
import type { Belonging } from '../src/usecases/accounts/provision.js';
import type { Context, TeamMember } from '../src/usecases/context.js';
import { need } from './perform.js';
import type { Desk } from './perform.js';
import { COMMISSIONERS, TEAMS } from './scenario.js';

/** Of every account of the demo, which holds nobody's record. */
export const DEMO_PASSPHRASE = 'marram grass holds the dune';

export interface DemoAccount {
  readonly role: Role;
  readonly displayName: string;
  /** Signs in by it with DEMO_PASSPHRASE. */
  readonly signInName: string;
  readonly accountId: string;
  /** The first token, shown this once. */
  readonly token: string;
  /** Name of the team or commissioner it belongs to. */
  readonly belongsTo: string;
  readonly teamId: string | null;
  readonly commissionerId: string | null;
}

export interface DemoTeam {
  readonly teamId: string;
  readonly name: string;
  readonly sites: readonly { readonly siteId: string; readonly name: string }[];
}

/** Who may sign in to the demo, and where they work. Plain data: it may be kept as JSON. */
export interface DemoAccounts {
  readonly teams: readonly DemoTeam[];
  readonly commissioners: readonly { readonly commissionerId: string; readonly name: string }[];
  /** The large team first: lead, clinician, admin, second clinician; then the other team, then the commissioners. */
  readonly accounts: readonly DemoAccount[];
}

/** Sets up teams, commissioners and accounts, and gives one desk per team by the team's key. */
export async function setUp(
  context: Context,
  expiresAt: string,
): Promise<{ readonly demo: DemoAccounts; readonly desks: ReadonlyMap<string, Desk> }> {
  const teams = new Map<string, DemoTeam>();
  for (const { key, name, sites } of TEAMS) {
    const made = await createTeam(context, { name, kind: 'demo', siteNames: sites.map((site) => site.name) });
    const named = Object.entries(made.siteIds).map(([siteName, siteId]) => ({ siteId, name: siteName }));
    teams.set(key, { teamId: made.teamId, name, sites: named });
  }
  const commissionerIds = new Map<string, string>();
  for (const { key, name, teamKeys } of COMMISSIONERS) {
    const teamIds = teamKeys.map((teamKey) => found(teams, teamKey).teamId);
    commissionerIds.set(key, await createCommissioner(context, { name, teamIds }));
  }
  const accounts: DemoAccount[] = [];
  const open = async (displayName: string, belongsTo: string, belonging: Belonging): Promise<string> => {
    const signInName = displayName.toLowerCase().replace(' ', '.');
    const account = { displayName, belonging, signInName, passphrase: DEMO_PASSPHRASE };
    const accountId = need('open an account', await openAccount(context, account));
    const { role } = belonging;
    const token = await issueToken(context, { accountId, role, tokenName: 'first token', expiresAt });
    accounts.push({
      accountId,
      token,
      role,
      displayName,
      signInName,
      belongsTo,
      teamId: belonging.role === 'commissioner' ? null : belonging.teamId,
      commissionerId: belonging.role === 'commissioner' ? belonging.commissionerId : null,
    });
    return accountId;
  };
  const desks = new Map<string, Desk>();
  for (const { key, staff, secondClinician } of TEAMS) {
    const { name, sites, teamId } = found(teams, key);
    const join = async (role: TeamMember['role'], displayName = staff[role]): Promise<TeamMember> => {
      return { accountId: await open(displayName, name, { role, teamId }), role, teamId };
    };
    await join('lead');
    const clinician = await join('clinician');
    const admin = await join('admin');
    const second = secondClinician === null ? clinician : await join('clinician', secondClinician.name);
    desks.set(key, {
      admin,
      clinicianAt: (siteName) =>
        secondClinician?.siteNames.includes(siteName) === true ? second : clinician,
      siteIds: new Map(sites.map((site) => [site.name, site.siteId] as const)),
      commissionerIds,
      patientIds: new Map(),
      referralIds: new Map(),
      assessmentIds: new Map(),
      referralVersions: new Map(),
    });
  }
  for (const { key, name, reader } of COMMISSIONERS) {
    await open(reader, name, { role: 'commissioner', commissionerId: found(commissionerIds, key) });
  }
  const commissioners = COMMISSIONERS.map(({ key, name }) => ({
    commissionerId: found(commissionerIds, key),
    name,
  }));
  return { demo: { teams: [...teams.values()], commissioners, accounts }, desks };
}

function found<Value>(made: ReadonlyMap<string, Value>, key: string): Value {
  const value = made.get(key);
  if (value === undefined) throw new Error(`The scenario names ${key}, which it does not set up.`);
  return value;
}
