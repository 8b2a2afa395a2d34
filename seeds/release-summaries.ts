import { addDays } from '../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import { latestClosedQuarter } from '../src/domain/calendar/period.js';
import type { Period } from '../src/domain/calendar/period.js';
import type { ReleaseEntry } from '../src/domain/release/kept-release.js';
import type { Context } from '../src/usecases/context.js';
import { makeRelease } from '../src/usecases/releases/make-release.js';
import { need } from './perform.js';
import type { DemoAccounts } from './set-up.js';

/** By then most of what happened in a quarter is entered. */
const DAYS_UNTIL_CUT = 45;

/**
 * The lead of the large team releases its last two finished quarters to each of its commissioners, merged as proposed, so
 * that a commissioner who signs in to the demo finds something to read.
 *
 * A quarter whose release is refused whatever is merged stays unreleased, as it would for a team.
 *
 * @param context with the clock at the day of the releases
 * @param demo of that record
 */
export async function releaseSummaries(
  context: Context,
  demo: DemoAccounts,
): Promise<readonly ReleaseEntry[]> {
  const lead = demo.accounts.find(({ role }) => role === 'lead');
  if (lead === undefined || lead.teamId === null) throw new Error('The demo has no lead.');
  const actor = { accountId: lead.accountId, role: 'lead', teamId: lead.teamId } as const;
  const made: ReleaseEntry[] = [];
  for (const quarter of lastTwoQuarters(context.clock.today())) {
    for (const { commissionerId } of demo.commissioners) {
      const released = await makeRelease(context, actor, {
        commissionerId,
        period: quarter.label,
        asAt: earlier(addDays(quarter.lastDay, DAYS_UNTIL_CUT), context.clock.today()),
        mode: 'rounded',
        tables: {},
        mergeAsProposed: true,
      });
      if (released.kind === 'refused' && released.refusal.code === 'release-refused') continue;
      made.push(need(`release ${quarter.label}`, released));
    }
  }
  return made;
}

function lastTwoQuarters(today: PlainDate): readonly Period[] {
  const last = latestClosedQuarter(today);
  return [latestClosedQuarter(last.firstDay), last];
}

function earlier(a: PlainDate, b: PlainDate): PlainDate {
  return a < b ? a : b;
}
