import { makeToken } from '../../auth/token.js';
import { TOKEN_DAYS } from '../../domain/account/account.js';
import { isWithin } from '../../domain/account/role.js';
import type { Role } from '../../domain/account/role.js';
import { laterBy } from '../../domain/calendar/instant.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Fault, Outcome } from '../../domain/refusal/refusal.js';
import { insertToken, listStoredTokens, revokeStoredToken } from '../../storage/accounts/tokens.js';
import type { StoredToken } from '../../storage/accounts/tokens.js';
import type { Executor } from '../../storage/connection.js';
import { recordEvent, recordRead } from '../audit/record-event.js';
import type { Actor, Context } from '../context.js';

const DAY_S = 24 * 3600;

/** A token that was just made: the secret is shown this once and stored as a hash. */
export interface CreatedToken {
  readonly token: StoredToken;
  readonly secret: string;
}

/** Makes an API token of whoever asks, in a role no higher than the one in which they ask. */
export async function createToken(
  context: Context,
  actor: Actor,
  wanted: { readonly name: string; readonly role: Role; readonly days: number },
): Promise<Outcome<CreatedToken>> {
  const faults = checkToken(actor, wanted);
  if (faults.length > 0) return refused({ code: 'rules-broken', faults });
  const { name, role, days } = wanted;
  const now = context.clock.now();
  const { secret, hash } = makeToken('api');
  const token: StoredToken = {
    id: context.newId(),
    accountId: actor.accountId,
    name,
    role,
    createdAt: now,
    expiresAt: laterBy(now, days * DAY_S),
    revokedAt: null,
  };
  return context.db.transaction().execute(async (trx) => {
    await insertToken(trx, { ...token, hash, now });
    const details = { name, role, expiresAt: token.expiresAt };
    await recordEvent(context, trx, actor, { action: 'token-created', subjectId: token.id, details });
    return done({ token, secret });
  });
}

/** Whoever asks sees the own tokens; a lead sees those of everybody of the team. Of the secrets there is nothing. */
export async function listTokens(context: Context, actor: Actor): Promise<readonly StoredToken[]> {
  const tokens = await tokensSeenBy(context.reader, actor);
  await recordRead(context, actor, { action: 'tokens-listed', details: { count: tokens.length } });
  return tokens;
}

/** Takes a token back that whoever asks can see; one that was taken back stays so. */
export async function revokeToken(
  context: Context,
  actor: Actor,
  request: { readonly tokenId: string; readonly reason: string | null },
): Promise<Outcome<StoredToken>> {
  const { tokenId, reason } = request;
  return context.db.transaction().execute(async (trx) => {
    const token = (await tokensSeenBy(trx, actor)).find(({ id }) => id === tokenId);
    if (token === undefined) return refused({ code: 'not-found', what: 'token' });
    if (token.revokedAt !== null) return done(token);
    const revokedAt = context.clock.now();
    await revokeStoredToken(trx, tokenId, revokedAt);
    const details = { name: token.name, of: token.accountId, ...(reason === null ? {} : { reason }) };
    await recordEvent(context, trx, actor, { action: 'token-revoked', subjectId: tokenId, details });
    return done({ ...token, revokedAt });
  });
}

async function tokensSeenBy(db: Executor, actor: Actor): Promise<readonly StoredToken[]> {
  const { accountId } = actor;
  return listStoredTokens(db, actor.role === 'lead' ? { teamId: actor.teamId } : { accountId });
}

function checkToken(
  actor: Actor,
  { role, days }: { readonly role: Role; readonly days: number },
): readonly Fault[] {
  const faults: Fault[] = [];
  if (!isWithin(role, actor.role)) {
    const message = `A token has at most your own role, ${actor.role}.`;
    faults.push({ pointer: '/role', code: 'role-too-high', message });
  }
  const { min, max } = TOKEN_DAYS;
  if (!Number.isInteger(days) || days < min || days > max) {
    const message = `Give a whole number of days from ${min} to ${max}.`;
    faults.push({ pointer: '/days', code: 'out-of-range', message });
  }
  return faults;
}
