import type { Executor } from '../connection.js';

/** Gives an account a new passphrase by its hash. */
export async function storePassphrase(
  db: Executor,
  accountId: string,
  passphrase: { readonly hash: string; readonly now: string },
): Promise<void> {
  await db
    .updateTable('account')
    .set({ passphrase_hash: passphrase.hash, passphrase_set_at: passphrase.now })
    .where('id', '=', accountId)
    .execute();
}

/** Gives an account a sign-in name. */
export async function storeSignInName(db: Executor, accountId: string, signInName: string): Promise<void> {
  await db.updateTable('account').set({ sign_in_name: signInName }).where('id', '=', accountId).execute();
}

/** Stores a new second factor, of which no code has been shown yet. */
export async function storeSecondFactor(db: Executor, accountId: string, secret: string): Promise<void> {
  await db
    .updateTable('account')
    .set({
      second_factor_secret: secret,
      second_factor_confirmed_at: null,
      second_factor_last_step: null,
    })
    .where('id', '=', accountId)
    .execute();
}

/** Takes a second factor away. */
export async function clearSecondFactor(db: Executor, accountId: string): Promise<void> {
  await db
    .updateTable('account')
    .set({ second_factor_secret: null, second_factor_confirmed_at: null, second_factor_last_step: null })
    .where('id', '=', accountId)
    .execute();
}

/** Notes that from now on the second factor is asked for. */
export async function confirmStoredSecondFactor(
  db: Executor,
  accountId: string,
  confirmed: { readonly step: number; readonly now: string },
): Promise<void> {
  await db
    .updateTable('account')
    .set({ second_factor_confirmed_at: confirmed.now, second_factor_last_step: confirmed.step })
    .where('id', '=', accountId)
    .execute();
}

/** Notes the time step of a code that was taken, so that neither it nor an earlier one is taken again. */
export async function storeSecondFactorStep(db: Executor, accountId: string, step: number): Promise<void> {
  await db
    .updateTable('account')
    .set({ second_factor_last_step: step })
    .where('id', '=', accountId)
    .execute();
}
