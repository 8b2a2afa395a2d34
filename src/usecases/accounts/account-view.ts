import type { AccountStatus, InvitationPurpose } from '../../domain/account/account.js';
import type { Role } from '../../domain/account/role.js';
import type { FullAccount } from '../../storage/accounts/accounts.js';
import type { StoredInvitation } from '../../storage/accounts/invitations.js';

/** An account as a lead sees it: nothing of it is secret. */
export interface AccountView {
  readonly id: string;
  readonly version: number;
  readonly displayName: string;
  readonly role: Role;
  readonly status: AccountStatus;
  /** Null for a member of the team. */
  readonly commissionerId: string | null;
  readonly signInName: string | null;
  /** False until the person has accepted the invitation. */
  readonly hasPassphrase: boolean;
  readonly hasSecondFactor: boolean;
  readonly signsInByProvider: boolean;
  readonly createdAt: string;
  /** An invitation that has not been used yet; null where there is none. */
  readonly invitation: { readonly purpose: InvitationPurpose; readonly expiresAt: string } | null;
}

/** Leaves out of an account whatever is secret. */
export function viewOf(account: FullAccount, invitation: StoredInvitation | null): AccountView {
  return {
    id: account.id,
    version: account.version,
    displayName: account.displayName,
    role: account.role,
    status: account.status,
    commissionerId: account.commissionerId,
    signInName: account.signInName,
    hasPassphrase: account.passphraseHash !== null,
    hasSecondFactor: account.hasSecondFactor,
    signsInByProvider: account.oidcSubject !== null,
    createdAt: account.createdAt,
    invitation: invitation === null ? null : { purpose: invitation.purpose, expiresAt: invitation.expiresAt },
  };
}
