import { withChanges } from '../../domain/release/changes-since.js';
import { countRelease } from '../../domain/release/count-release.js';
import { peopleOf } from '../../domain/release/count-tables.js';
import { withDefaultLists } from '../../domain/release/default-lists.js';
import type { IssuedRelease } from '../../domain/release/issued.js';
import { policyOf } from '../../domain/release/policy.js';
import { presentRelease } from '../../domain/release/present-release.js';
import { protectRelease } from '../../domain/release/protect-release.js';
import type { AttackReport } from '../../domain/release/protect-release.js';
import type { ProtectedRelease } from '../../domain/release/protected-release.js';
import { settleRelease } from '../../domain/release/settle.js';
import type { TableChoices } from '../../domain/release/settle.js';
import { clearedSummary, summaryCandidates } from '../../domain/release/summaries.js';
import { quarterFrom } from '../../reports/quarterly/quarter.js';
import type { DraftInput } from './draft-input.js';
import type { CheckedRequest } from './release-request.js';

/** A draft: what would leave the team, the counts behind it, and what the attack came to. */
export interface ReleaseDraft {
  readonly checked: CheckedRequest;
  readonly release: ProtectedRelease;
  readonly issued: IssuedRelease;
  readonly attack: AttackReport;
  /** The code lists that were used: asked for, those of few people, or taken up from proposals. */
  readonly choices: TableChoices;
}

/** Counts, protects and attacks a release. The counts are those of the commissioner's referrals at the data cut. */
export function draftRelease(input: DraftInput): ReleaseDraft {
  const { checked, number, earlier, corrected, settings } = input;
  const { today, request } = input.asked;
  const { period, asAt } = checked;
  const { commissionerId, corrects } = request;
  const quarter = quarterFrom({
    facts: input.facts,
    period,
    asAt,
    settings,
    sites: [],
    narrowing: { commissionerId },
  });
  const people = peopleOf(quarter.cohorts);
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
    teamName: input.teamName,
    commissionerId,
    commissionerName: input.commissionerName,
    period: { ...issued.period, firstDay: period.firstDay, lastDay: period.lastDay },
    dataCut: asAt,
    releasedOn: today,
    settingsVersion: input.settingsVersion,
    agreement: request.mode === 'exact' ? (request.agreement ?? null) : null,
    correction:
      corrects === undefined ? null : { ofNumber: corrects.number, reason: corrects.reason, changes: [] },
  };
  const presented = presentRelease(issued, head, summaries, settings.targets);
  const release = corrected === null ? presented : withChanges(presented, corrected);
  return { checked, release, issued, attack: draft.attack, choices };
}
