import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { readReleased } from '../../domain/release/canonical.js';
import { withChanges } from '../../domain/release/changes-since.js';
import { countRelease } from '../../domain/release/count-release.js';
import { peopleOf } from '../../domain/release/count-tables.js';
import type { IssuedRelease } from '../../domain/release/issued.js';
import { withDefaultLists } from '../../domain/release/default-lists.js';
import { policyOf } from '../../domain/release/policy.js';
import { presentRelease } from '../../domain/release/present-release.js';
import { protectRelease } from '../../domain/release/protect-release.js';
import type { AttackReport } from '../../domain/release/protect-release.js';
import type { ProtectedRelease } from '../../domain/release/protected-release.js';
import { settleRelease } from '../../domain/release/settle.js';
import type { TableChoices } from '../../domain/release/settle.js';
import { clearedSummary, summaryCandidates } from '../../domain/release/summaries.js';
import { quarterFrom } from '../../reports/quarterly/quarter.js';
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
import type { Context, TeamMember } from '../context.js';
import { checkAgainst, checkRequest } from './release-request.js';
import type { CheckedRequest, ReleaseRequest } from './release-request.js';

/** A draft: what would leave the team, the counts behind it, and what the attack came to. */
export interface ReleaseDraft {
  readonly checked: CheckedRequest;
  readonly release: ProtectedRelease;
  readonly issued: IssuedRelease;
  readonly attack: AttackReport;
  /** The code lists that were used: asked for, those of few people, or taken up from proposals. */
  readonly choices: TableChoices;
}

/**
 * Counts, protects and attacks a release, without keeping anything. The counts are those of the commissioner's referrals at
 * the data cut.
 */
export async function draftRelease(
  { reader, clock }: Context,
  { teamId }: Pick<TeamMember, 'teamId'>,
  request: ReleaseRequest,
): Promise<Outcome<ReleaseDraft>> {
  const commissioners = await commissionersOfTeam(reader, teamId);
  const checking = checkRequest(
    request,
    clock.today(),
    commissioners.map(({ id }) => id),
  );
  if (checking.kind === 'refused') return checking;
  const checked = checking.value;
  const { period, asAt, financialYear } = checked;
  const against = checkAgainst(checked, await listReleases(reader, { teamId }));
  if (against.kind === 'refused') return refused(against.refusal);
  const team = await getTeam(reader, teamId);
  const { version, settings } = await currentSettings(reader, teamId);
  const ids = await idsTouchedInPeriod(reader, teamId, period);
  const facts = await loadReferralFacts(reader, teamId, ids, settings);
  const { commissionerId, corrects } = request;
  const quarter = quarterFrom({ facts, period, asAt, settings, sites: [], narrowing: { commissionerId } });
  const people = peopleOf(quarter.cohorts);
  const number = (await lastReleaseNumber(reader)) + 1;
  const earlier = (await countsOfYear(reader, teamId, financialYear)).map(({ issued }) => issued);
  const counting = {
    ref: String(number),
    commissionerId,
    period,
    policy: policyOf(settings.disclosure, request.mode),
    corrects: corrects === undefined ? null : String(corrects.number),
    people,
    context: quarter.context,
  };
  const count = (choices: TableChoices) => countRelease(counting, choices);
  const asked = withDefaultLists(count(request.tables).totals, counting.policy, request.tables);
  const { draft, choices } = request.mergeAsProposed
    ? settleRelease(count, earlier, asked)
    : { draft: protectRelease(count(asked), earlier), choices: asked };
  const summaries = summaryCandidates(people, quarter.context).flatMap(
    (candidate) => clearedSummary(candidate, draft.release, earlier) ?? [],
  );
  const issued: IssuedRelease = { ...draft.release, summaries: summaries.map(({ id }) => id) };
  const head = {
    number,
    teamName: team.name,
    commissionerId,
    commissionerName: commissioners.find(({ id }) => id === commissionerId)?.name ?? '',
    period: { ...issued.period, firstDay: period.firstDay, lastDay: period.lastDay },
    dataCut: asAt,
    releasedOn: clock.today(),
    settingsVersion: version,
    agreement: request.mode === 'exact' ? (request.agreement ?? null) : null,
    correction:
      corrects === undefined ? null : { ofNumber: corrects.number, reason: corrects.reason, changes: [] },
  };
  const presented = presentRelease(issued, head, summaries, settings.targets);
  const release =
    corrects === undefined
      ? presented
      : withChanges(presented, readReleased(await releaseDocument(reader, corrects.number)));
  return done({ checked, release, issued, attack: draft.attack, choices });
}
