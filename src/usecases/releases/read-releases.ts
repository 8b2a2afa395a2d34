import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { readReleased } from '../../domain/release/canonical.js';
import type { ReleaseEntry, ReleaseForm } from '../../domain/release/kept-release.js';
import type { ProtectedRelease } from '../../domain/release/protected-release.js';
import {
  findRelease,
  listReleases,
  releaseDocument,
  releaseFile,
  releaseForms,
  withdrawRelease,
} from '../../storage/releases/releases.js';
import type { ReleaseReader } from '../../storage/releases/releases.js';
import { recordEvent, recordRead } from '../audit/record-event.js';
import type { Actor, Context, TeamMember } from '../context.js';
import { RELEASE_MEDIA_TYPES } from './render-release.js';

/** Whose releases somebody may read: a lead those of the team, a commissioner those released to it. */
function readerOf(actor: Actor): ReleaseReader {
  return actor.role === 'commissioner' ? { commissionerId: actor.commissionerId } : { teamId: actor.teamId };
}

/** The releases somebody may read, newest first; each team is told whose releases a commissioner has listed. */
export async function readReleases(context: Context, actor: Actor): Promise<readonly ReleaseEntry[]> {
  const releases = await listReleases(context.reader, readerOf(actor));
  const teamIds = new Set(releases.map(({ teamId }) => teamId));
  if (teamIds.size === 0) await recordRead(context, actor, { action: 'releases-listed' });
  for (const teamId of teamIds) await recordRead(context, actor, { action: 'releases-listed', teamId });
  return releases;
}

/** A release with what has become of it since. */
export interface ReadRelease {
  readonly entry: ReleaseEntry;
  readonly release: ProtectedRelease;
  /** Canonical text: the same for ever. */
  readonly text: string;
  /** Forms in which it can be read beside. */
  readonly forms: readonly ReleaseForm[];
}

/** One release; the view is told to the trail of the team that released it. */
export async function readRelease(
  context: Context,
  actor: Actor,
  number: number,
  form: 'page' | 'json' = 'page',
): Promise<Outcome<ReadRelease>> {
  const entry = await findRelease(context.reader, readerOf(actor), number);
  if (entry === null) return refused({ code: 'not-found', what: 'release' });
  await tellView(context, actor, entry, form);
  const text = await releaseDocument(context.reader, number);
  const forms = await releaseForms(context.reader, number);
  return done({ entry, release: readReleased(text), text, forms });
}

/** A release in another form, byte for byte as it was written on the day. */
export async function readReleaseFile(
  context: Context,
  actor: Actor,
  number: number,
  form: ReleaseForm,
): Promise<Outcome<{ readonly content: Buffer; readonly mediaType: string }>> {
  const entry = await findRelease(context.reader, readerOf(actor), number);
  if (entry === null) return refused({ code: 'not-found', what: 'release' });
  const content = await releaseFile(context.reader, number, form);
  if (content === null) return refused({ code: 'not-found', what: 'release' });
  await tellView(context, actor, entry, form);
  return done({ content, mediaType: RELEASE_MEDIA_TYPES[form] });
}

/** Withdraws a release: it stays readable, and says that it no longer stands. */
export async function withdraw(
  context: Context,
  actor: TeamMember,
  number: number,
  reason: string,
): Promise<Outcome<ReleaseEntry>> {
  const { teamId, accountId } = actor;
  return context.db.transaction().execute(async (trx) => {
    const entry = await findRelease(trx, { teamId }, number);
    if (entry === null) return refused({ code: 'not-found', what: 'release' });
    if (entry.withdrawn !== null) return refused({ code: 'release-closed', why: 'withdrawn' });
    await withdrawRelease(trx, number, { at: context.clock.now(), by: accountId, reason });
    await recordEvent(context, trx, actor, {
      action: 'release-withdrawn',
      subjectId: String(number),
      details: { reason },
    });
    const withdrawn = await findRelease(trx, { teamId }, number);
    if (withdrawn === null) throw new Error('A release is gone.');
    return done(withdrawn);
  });
}

async function tellView(context: Context, actor: Actor, entry: ReleaseEntry, form: string): Promise<void> {
  await recordRead(context, actor, {
    action: 'release-read',
    teamId: entry.teamId,
    subjectId: String(entry.number),
    details: { form },
  });
}
