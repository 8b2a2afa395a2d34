import { z } from 'zod';
import { ACCOUNT_STATUSES, INVITATION_PURPOSES } from '../../domain/account/account.js';
import { ROLES } from '../../domain/account/role.js';
import type { AccountView } from '../../usecases/accounts/account-view.js';
import type { Invited, NewAccount as Wanted } from '../../usecases/accounts/invite-account.js';
import { hasSomeChange, NO_CHANGE } from '../schema/changes.js';
import { idField, lineField, orNull, reasonField } from '../schema/fields.js';
import { pageSchema } from '../schema/paging.js';

const displayName = lineField(100);
const signInName = z.string().max(100).describe('Lower case; 3 to 80 letters, digits, dots, hyphens, @');

export const AccountParams = z.strictObject({ accountId: idField });

/** Only a commissioner's account has a commissioner, and it always has. */
const BELONGS = {
  message: 'Name a commissioner for the role commissioner, and none for any other.',
  path: ['commissionerId'],
  when: ({ issues }: { readonly issues: readonly unknown[] }) => issues.length === 0,
};

export const NewAccount = z
  .strictObject({
    displayName,
    signInName,
    role: z.enum(ROLES),
    commissionerId: orNull(idField).describe('For the role commissioner: who pays for the team'),
  })
  .refine(({ role, commissionerId }) => (role === 'commissioner') === (commissionerId !== null), BELONGS)
  .meta({ id: 'NewAccount' });

/** The account that a body asks for. */
export function wantedAccount(body: z.output<typeof NewAccount>): Wanted {
  const { displayName: name, signInName: signIn, role, commissionerId } = body;
  const wanted = { displayName: name, signInName: signIn };
  if (role !== 'commissioner') return { ...wanted, belonging: { role } };
  if (commissionerId === null) throw new Error('The schema lets no commissioner pass without a place.');
  return { ...wanted, belonging: { role, commissionerId } };
}

export const AccountChange = z
  .strictObject({
    reason: reasonField,
    changes: z
      .strictObject({
        displayName: z.exactOptional(displayName),
        role: z.exactOptional(z.enum(ROLES)),
        status: z.exactOptional(z.enum(ACCOUNT_STATUSES)),
      })
      .refine(hasSomeChange, NO_CHANGE),
  })
  .meta({ id: 'AccountChange' });

export const NewInvitation = z
  .strictObject({ signInName: orNull(signInName).describe('Where the account has none yet; else null') })
  .meta({ id: 'NewInvitation' });

/** Why something is done to an account. */
export const WithReason = z.strictObject({ reason: reasonField }).meta({ id: 'WithReason' });

export const AccountShown = z
  .strictObject({
    id: z.string(),
    version: z.int(),
    displayName: z.string(),
    role: z.enum(ROLES),
    status: z.enum(ACCOUNT_STATUSES),
    commissionerId: z.string().nullable().describe('Null for a member of the team'),
    signInName: z.string().nullable(),
    hasPassphrase: z.boolean().describe('False until the person has accepted the invitation'),
    hasSecondFactor: z.boolean(),
    signsInByProvider: z.boolean().describe('Signs in by the OpenID Connect provider of the service'),
    createdAt: z.string().describe('UTC'),
    invitation: z
      .strictObject({ purpose: z.enum(INVITATION_PURPOSES), expiresAt: z.string().describe('UTC') })
      .nullable()
      .describe('An invitation that has not been used yet'),
  })
  .meta({ id: 'Account' });

export const AccountPage = pageSchema(AccountShown, 'AccountPage');

export const InvitedShown = z
  .strictObject({
    account: AccountShown,
    invitationSecret: z
      .string()
      .describe('Goes to the person, by a way that only they read. Shown this once and stored as a hash'),
  })
  .meta({ id: 'InvitedAccount' });

/** An account as the API shows it. */
export function presentAccount(account: AccountView): z.output<typeof AccountShown> {
  return {
    id: account.id,
    version: account.version,
    displayName: account.displayName,
    role: account.role,
    status: account.status,
    commissionerId: account.commissionerId,
    signInName: account.signInName,
    hasPassphrase: account.hasPassphrase,
    hasSecondFactor: account.hasSecondFactor,
    signsInByProvider: account.signsInByProvider,
    createdAt: account.createdAt,
    invitation: account.invitation,
  };
}

/** An account with the secret of its invitation. */
export function presentInvited({ account, invitationSecret }: Invited): z.output<typeof InvitedShown> {
  return { account: presentAccount(account), invitationSecret };
}
