import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { canonicalText } from '../../domain/release/canonical.js';
import type { ReleaseEntry } from '../../domain/release/kept-release.js';
import { findRelease, insertRelease, lastReleaseNumber } from '../../storage/releases/releases.js';
import { recordEvent, recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import type { ReleaseDraft } from './draft-release.js';
import type { ReleaseRequest } from './release-request.js';

/** A release made meanwhile asks for a new attack; more often than this is a fault. */
const MOST_TRIES = 5;

/** A draft for the lead, with the counts behind it; that it was seen is told to the trail. */
export async function previewRelease(
  context: Context,
  actor: TeamMember,
  request: ReleaseRequest,
): Promise<Outcome<ReleaseDraft>> {
  const drafted = await draftFor(context, actor, request);
  if (drafted.kind === 'refused') return drafted;
  await recordRead(context, actor, { action: 'release-previewed', details: toldOf(drafted.value) });
  return drafted;
}

/**
 * Releases a summary: counted, attacked, numbered, and kept with all its forms, the counts and the result of the attack.
 *
 * @returns refused where the attack found anything out, with the tables and the categories to merge; nothing is kept then
 */
export async function makeRelease(
  context: Context,
  actor: TeamMember,
  request: ReleaseRequest,
): Promise<Outcome<ReleaseEntry>> {
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const drafted = await draftFor(context, actor, request);
    if (drafted.kind === 'refused') return drafted;
    const draft = drafted.value;
    if (!draft.attack.isPassed) {
      await recordRead(context, actor, { action: 'release-refused', details: toldOf(draft) });
      return refused({ code: 'release-refused', attack: draft.attack });
    }
    const kept = await keep(context, actor, draft);
    if (kept !== null) return done(kept);
  }
  throw new Error('Other releases were made all the time.');
}

function draftFor(
  { releases, clock }: Context,
  { teamId }: TeamMember,
  request: ReleaseRequest,
): Promise<Outcome<ReleaseDraft>> {
  return releases.draft({ teamId, today: clock.today(), request });
}

/** Null where another release was made since the draft was attacked. */
async function keep(context: Context, actor: TeamMember, draft: ReleaseDraft): Promise<ReleaseEntry | null> {
  const { release, issued, attack, checked } = draft;
  const { teamId, accountId } = actor;
  const files = await context.releases.forms(release);
  const now = context.clock.now();
  return context.db.transaction().execute(async (trx) => {
    if ((await lastReleaseNumber(trx)) !== release.number - 1) return null;
    await insertRelease(trx, {
      number: release.number,
      teamId,
      commissionerId: release.commissionerId,
      financialYear: checked.financialYear,
      period: release.period.label,
      corrects: release.correction?.ofNumber ?? null,
      document: canonicalText(release),
      issued,
      attack,
      attackedAt: now,
      releasedAt: now,
      releasedBy: accountId,
      files,
    });
    const entry = await findRelease(trx, { teamId }, release.number);
    if (entry === null) throw new Error('A new release is not there.');
    await recordEvent(context, trx, actor, {
      action: 'release-made',
      subjectId: String(release.number),
      details: { ...toldOf(draft), digest: entry.digest },
    });
    return entry;
  });
}

function toldOf({ release, attack, choices }: ReleaseDraft): Readonly<Record<string, unknown>> {
  return {
    commissionerId: release.commissionerId,
    period: release.period.label,
    asAt: release.dataCut,
    mode: release.policy.mode,
    tables: choices,
    isPassed: attack.isPassed,
    ...(release.correction === null ? {} : { corrects: release.correction.ofNumber }),
  };
}
