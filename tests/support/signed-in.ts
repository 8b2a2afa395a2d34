import type { Browser, BrowserContextOptions } from 'playwright-core';
import { makeToken } from '../../src/auth/token.js';
import { findAccount } from '../../src/storage/accounts/accounts.js';
import { openSession } from '../../src/usecases/accounts/sign-in.js';
import { SESSION_COOKIE } from '../../src/web/session-cookie.js';
import { openPage } from './browser.js';
import type { WatchedPage } from './browser.js';
import type { TestApp, TestRole } from './start-app.js';

/** The id of the account of a role. */
export async function accountIdOf(service: TestApp, role: TestRole): Promise<string> {
  const { db } = service.record.connection;
  const all = db.selectFrom('account').select('id').where('role', '=', role);
  const own =
    role === 'commissioner'
      ? all.where('commissioner_id', '=', service.commissionerId)
      : all.where('team_id', '=', service.teamId);
  return (await own.orderBy('id').executeTakeFirstOrThrow()).id;
}

/** Opens a session of a role without asking for a passphrase, which would take long. @returns its secret */
export async function sessionSecretFor(service: TestApp, role: TestRole): Promise<string> {
  return sessionSecretOf(service, await accountIdOf(service, role));
}

/** The same of an account. */
export async function sessionSecretOf(service: TestApp, accountId: string): Promise<string> {
  const { context } = service.record;
  const account = await findAccount(context.db, { id: accountId });
  if (account === null) throw new Error('There is no such account.');
  return context.db
    .transaction()
    .execute(
      async (trx) => (await openSession(context, trx, account, { method: 'passphrase' })).sessionSecret,
    );
}

/** A session secret that opens nothing, such as one of long ago. */
export function strangeSecret(): string {
  return makeToken('session').secret;
}

/**
 * Opens a browser page in a profile of its own in which a role is signed in.
 *
 * @param origin where the service listens, as `serve` gives it
 */
export async function openSignedIn(
  browser: Browser,
  service: TestApp,
  origin: string,
  role: TestRole,
  options: BrowserContextOptions = {},
): Promise<WatchedPage> {
  const watched = await openPage(browser, origin, options);
  await watched.context.addCookies([
    {
      name: SESSION_COOKIE,
      value: await sessionSecretFor(service, role),
      // The browser sends it to this machine without encryption as well, but takes it only for an encrypted address.
      url: origin.replace(/^http:/, 'https:'),
      secure: true,
      httpOnly: true,
      sameSite: 'Lax',
    },
  ]);
  return watched;
}
