import { londonTime } from '../../domain/calendar/london-time.js';
import type { AccountView } from '../../usecases/accounts/account-view.js';

/** How an account stands, in words. @example 'invited, until 2 December 2026, 10:00' */
export function accountState(account: AccountView): string {
  if (account.status === 'suspended') return 'suspended';
  const { invitation } = account;
  if (invitation !== null) {
    const what = invitation.purpose === 'join' ? 'invited' : 'may choose a new passphrase';
    return `${what}, until ${londonTime(invitation.expiresAt)}`;
  }
  const canSignIn = account.hasPassphrase || account.signsInByProvider;
  return canSignIn ? 'active' : 'cannot sign in: no passphrase and no invitation';
}

/** What somebody signs in by, in words. */
export function signInWords(account: AccountView): string {
  const ways = [
    ...(account.hasPassphrase ? ['passphrase'] : []),
    ...(account.hasSecondFactor ? ['second factor'] : []),
    ...(account.signsInByProvider ? ['provider of the organisation'] : []),
  ];
  return ways.length === 0 ? 'nothing yet' : ways.join(', ');
}
