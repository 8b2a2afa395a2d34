import { isCommonPassword } from '../../auth/common-passwords.js';
import { hashPassphrase } from '../../auth/passphrase-hash.js';
import { hashToken } from '../../auth/token.js';
import type { InvitationPurpose } from '../../domain/account/account.js';
import { checkPassphrase, normalisePassphrase } from '../../domain/account/passphrase.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { storePassphrase } from '../../storage/accounts/credentials.js';
import { findOpenInvitation, useInvitation } from '../../storage/accounts/invitations.js';
import { endSessions } from '../../storage/accounts/login-sessions.js';
import { recordEventOf } from '../audit/record-event.js';
import type { Context } from '../context.js';
import { openSession } from './sign-in.js';
import type { NewSession } from './sign-in.js';

/** What the holder of an invitation link is shown. */
export interface InvitationView {
  readonly purpose: InvitationPurpose;
  readonly displayName: string;
  readonly signInName: string;
  readonly expiresAt: string;
}

/** Reads an invitation by the secret of its link; refused where it was used, taken back or is too old. */
export async function readInvitation(context: Context, secret: string): Promise<Outcome<InvitationView>> {
  const found = await findOpenInvitation(context.reader, hashToken(secret), context.clock.now());
  if (found === null || found.account.signInName === null) return refused({ code: 'invitation-not-valid' });
  const { account, invitation } = found;
  const { purpose, expiresAt } = invitation;
  return done({ purpose, expiresAt, displayName: account.displayName, signInName: found.account.signInName });
}

/**
 * Uses an invitation, once: the passphrase is set, every session there was ends, and the person is signed in. A second
 * factor, where there is one, is still asked for.
 *
 * @returns the new session; refused with the pointer `/passphrase` where the passphrase may not be used
 */
export async function acceptInvitation(
  context: Context,
  acceptance: { readonly secret: string; readonly passphrase: string },
): Promise<Outcome<NewSession>> {
  const read = await readInvitation(context, acceptance.secret);
  if (read.kind === 'refused') return read;
  const { signInName } = read.value;
  const passphrase = normalisePassphrase(acceptance.passphrase);
  const faults = checkPassphrase('/passphrase', passphrase, { signInName, isCommon: isCommonPassword });
  if (faults.length > 0) return refused({ code: 'rules-broken', faults });
  const hash = await hashPassphrase(passphrase);
  return context.db.transaction().execute(async (trx) => {
    const now = context.clock.now();
    // Read once more, where nobody writes meanwhile: of two who hold the link one is too late.
    const found = await findOpenInvitation(trx, hashToken(acceptance.secret), now);
    if (found === null) return refused({ code: 'invitation-not-valid' });
    const { account, invitation } = found;
    await useInvitation(trx, invitation.id, now);
    await storePassphrase(trx, account.id, { hash, now });
    await endSessions(trx, account.id, { reason: 'passphrase-changed', now });
    await recordEventOf(context, trx, account, {
      action: 'invitation-accepted',
      subjectId: account.id,
      details: { purpose: invitation.purpose },
    });
    return done(await openSession(context, trx, account, { method: 'invitation' }));
  });
}
