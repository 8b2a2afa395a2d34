import type { Role } from '../../domain/account/role.js';
import type { NewAuditEvent } from '../../domain/audit/audit-event.js';
import { appendAuditEvent } from '../../storage/audit/audit-trail.js';
import type { UnchainedEvent } from '../../storage/audit/audit-trail.js';
import type { Executor } from '../../storage/connection.js';
import type { Actor, Context } from '../context.js';
import { notWritable } from '../not-writable.js';
import { claimKey } from '../requests/claim-key.js';

/** Tells the trail of an event, in the transaction of what it tells, which takes the key of the request with it. */
export async function recordEvent(
  context: Context,
  trx: Executor,
  actor: Actor,
  event: NewAuditEvent,
): Promise<void> {
  const { accountId, requestKey } = actor;
  if (requestKey !== undefined) {
    const subjectId = event.subjectId ?? event.referralId ?? event.patientId ?? null;
    await claimKey(context, trx, { accountId, requestKey, subjectId });
  }
  const teamId = event.teamId ?? (actor.role === 'commissioner' ? null : actor.teamId);
  await recordEventOf(context, trx, { id: actor.accountId, role: actor.role, teamId }, event);
}

/** Whom an event is told of where nobody is signed in; null for what is not known. */
export interface ToldOf {
  readonly id: string | null;
  readonly role: Role | null;
  readonly teamId: string | null;
}

/** As recordEvent, where nobody is signed in: of the account that is meant, or of the operator's command. */
export async function recordEventOf(
  context: Context,
  trx: Executor,
  of: ToldOf | null,
  event: NewAuditEvent,
): Promise<void> {
  const told: UnchainedEvent = {
    occurredAt: context.clock.now(),
    teamId: of?.teamId ?? null,
    accountId: of?.id ?? null,
    role: of?.role ?? null,
    action: event.action,
    patientId: event.patientId ?? null,
    referralId: event.referralId ?? null,
    subjectId: event.subjectId ?? null,
    details: JSON.stringify(event.details ?? {}),
  };
  if (context.tellInstead !== undefined) context.tellInstead(told);
  else await appendAuditEvent(trx, told);
}

/**
 * Tells the trail that something was read; nothing is shown before it has been told. While the record cannot be written
 * it is kept to be told later (`untold-reads.ts`).
 */
export async function recordRead(context: Context, actor: Actor, event: NewAuditEvent): Promise<void> {
  const occurredAt = context.clock.now();
  try {
    await context.db.transaction().execute((trx) => recordEvent(context, trx, actor, event));
  } catch (error) {
    if (notWritable(error) === null) throw error;
    if (!context.untold.keep({ occurredAt, actor: withoutKey(actor), event })) throw error;
  }
}

/** The key of a request is taken by what it writes, and not by what is told later. */
function withoutKey(actor: Actor): Actor {
  const { accountId, role } = actor;
  return role === 'commissioner'
    ? { accountId, role, commissionerId: actor.commissionerId }
    : { accountId, role, teamId: actor.teamId };
}
