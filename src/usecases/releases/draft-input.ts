import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { ReferralFacts } from '../../domain/cohort/referral-facts.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { readReleased } from '../../domain/release/canonical.js';
import type { IssuedRelease } from '../../domain/release/issued.js';
import type { ProtectedRelease } from '../../domain/release/protected-release.js';
import type { TeamSettings } from '../../domain/settings/team-settings.js';
import { idsTouchedInPeriod } from '../../storage/facts/cohort-ids.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { commissionersOfTeam, getTeam } from '../../storage/providers/providers.js';
import {
  countsOfYear,
  lastReleaseNumber,
  listReleases,
  releaseDocument,
} from '../../storage/releases/releases.js';
import { currentSettings } from '../../storage/settings/settings.js';
import type { Executor } from '../../storage/connection.js';
import { checkAgainst, checkRequest } from './release-request.js';
import type { CheckedRequest, ReleaseRequest } from './release-request.js';

/** Which release a team asks for, and when. */
export interface ReleaseAsked {
  readonly teamId: string;
  /** The date in London. */
  readonly today: PlainDate;
  readonly request: ReleaseRequest;
}

/** All that a draft is made from. */
export interface DraftInput {
  readonly asked: ReleaseAsked;
  readonly checked: CheckedRequest;
  readonly teamName: string;
  readonly commissionerName: string;
  readonly settingsVersion: number;
  readonly settings: TeamSettings;
  readonly facts: readonly ReferralFacts[];
  /** The number that the release would have. */
  readonly number: number;
  /** The counts of every release of the team and the financial year so far. */
  readonly earlier: readonly IssuedRelease[];
  /** The release that is corrected; null for a new one. */
  readonly corrected: ProtectedRelease | null;
}

/** Reads what a draft is made from. */
export async function draftInput(snapshot: Executor, asked: ReleaseAsked): Promise<Outcome<DraftInput>> {
  const { teamId, today, request } = asked;
  const commissioners = await commissionersOfTeam(snapshot, teamId);
  const ids = commissioners.map(({ id }) => id);
  const checking = checkRequest(request, today, ids);
  if (checking.kind === 'refused') return checking;
  const checked = checking.value;
  const against = checkAgainst(checked, await listReleases(snapshot, { teamId }));
  if (against.kind === 'refused') return refused(against.refusal);
  const { version, settings } = await currentSettings(snapshot, teamId);
  const touched = await idsTouchedInPeriod(snapshot, teamId, checked.period);
  const { corrects } = request;
  return done({
    asked,
    checked,
    teamName: (await getTeam(snapshot, teamId)).name,
    commissionerName: commissioners.find(({ id }) => id === request.commissionerId)?.name ?? '',
    settingsVersion: version,
    settings,
    facts: await loadReferralFacts(snapshot, teamId, touched, settings),
    number: (await lastReleaseNumber(snapshot)) + 1,
    earlier: (await countsOfYear(snapshot, teamId, checked.financialYear)).map(({ issued }) => issued),
    corrected: corrects === undefined ? null : readReleased(await releaseDocument(snapshot, corrects.number)),
  });
}
