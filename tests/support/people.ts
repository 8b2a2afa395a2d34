import { openAccount } from '../../src/usecases/accounts/provision.js';
import type { Belonging } from '../../src/usecases/accounts/provision.js';
import { signIn } from '../../src/usecases/accounts/sign-in.js';
import type { NewSession } from '../../src/usecases/accounts/sign-in.js';
import { whoseSession } from '../../src/usecases/accounts/session.js';
import type { SignedIn } from '../../src/usecases/accounts/session.js';
import type { Context } from '../../src/usecases/context.js';
import type { Outcome } from '../../src/domain/refusal/refusal.js';

/** Allowed by the rules, and nobody's. */
export const PASSPHRASE = 'sandpiper above the mudflat';
export const ADDRESS = '192.0.2.17';

/** The value of an outcome that must have come about. */
export function valueOf<Value>(outcome: Outcome<Value>): Value {
  if (outcome.kind === 'refused') throw new Error(`Refused: ${JSON.stringify(outcome.refusal)}`);
  return outcome.value;
}

/** Somebody with a passphrase; gives the id of the account. */
export async function givenPerson(
  context: Context,
  belonging: Belonging,
  signInName: string,
): Promise<string> {
  const person = { displayName: `Person ${signInName}`, belonging, signInName, passphrase: PASSPHRASE };
  return valueOf(await openAccount(context, person));
}

/** Signs somebody in by the passphrase that every person of the tests has. */
export async function signedIn(context: Context, signInName: string): Promise<NewSession> {
  return valueOf(await signIn(context, { signInName, passphrase: PASSPHRASE, address: ADDRESS }));
}

/** The session of somebody who signs in by passphrase alone. */
export async function sessionOf(
  context: Context,
  signInName: string,
): Promise<SignedIn & { readonly secret: string }> {
  const { sessionSecret } = await signedIn(context, signInName);
  const found = await whoseSession(context, sessionSecret);
  if (found === null) throw new Error('The session is not there.');
  return { ...found, secret: sessionSecret };
}
