import { britishDate } from '../../domain/calendar/british-date.js';
import { plainDate } from '../../domain/calendar/plain-date.js';
import type { ProtectedCount } from '../../domain/release/protected-count.js';
import type { ProtectedRelease, ProtectedShare } from '../../domain/release/protected-release.js';

/** The one mark of a hidden count, in every form. */
export const HIDDEN_MARK = '*';

/** A count as it is read. @example countText(hidden) -> '*' */
export function countText(count: ProtectedCount): string {
  return count.kind === 'hidden' ? HIDDEN_MARK : String(count.value);
}

/** A count in a sentence. @example countInWords(shown, 45; rounded) -> 'about 45' */
export function countInWords(count: ProtectedCount, { policy }: ProtectedRelease): string {
  if (count.kind === 'hidden') return 'a number that is not shown';
  if (count.value === 0) return 'no';
  return policy.mode === 'rounded' ? `about ${count.value}` : String(count.value);
}

/** A percentage as it is read, or why there is none. */
export function shareText(share: ProtectedShare, { policy }: ProtectedRelease): string {
  const { percent, interval, denominator, whyNot } = share;
  switch (whyNot) {
    case 'hidden':
      return 'not shown: a count is hidden';
    case 'too-few':
      return `not shown: fewer than ${policy.minimumForPercent} people`;
    case null:
      return `${percent} % of ${denominator} (${interval?.low} to ${interval?.high})`;
  }
}

/** How a percentage stands to its target; empty where there is none. */
export function targetWords({ percent, interval, target }: ProtectedShare): string {
  if (target === null) return '';
  const aim = `target ${target.percent} %`;
  if (percent === null || interval === null) return aim;
  const isReached = percent >= target.percent;
  const isWithinChance = interval.low <= target.percent && target.percent <= interval.high;
  const verdict = isReached ? 'reached' : 'not reached';
  return `${aim}: ${verdict}${isWithinChance ? ', within what chance alone can do' : ''}`;
}

/** What is hidden and why, in general words; never which count for which reason. */
export function hidingWords({ policy, agreement }: ProtectedRelease): readonly string[] {
  const { hidesBelow, roundingBase, minimumForPercent, minimumForMeans } = policy;
  return [
    `A mark ${HIDDEN_MARK} stands for a count that is hidden so that nobody can be recognised. It is never 0: a 0 is printed.`,
    roundingBase === null
      ? `Counts from 1 to ${hidesBelow - 1} are hidden, and some larger ones with them, where the small ones could be worked out from what is left. All other counts are exact.`
      : `Counts from 1 to ${hidesBelow - 1} are hidden. All other counts are rounded to the nearest multiple of ${roundingBase}, totals too, so that rows need not add up to their total.`,
    `Percentages are of the printed counts, and are left out below ${minimumForPercent} people or where a count is hidden. Means and medians are of at least ${minimumForMeans} people.`,
    'Groups were merged, or a table left out, where too few people were in them.',
    'Before it left the team this summary was tested together with all other summaries of the same financial year: no hidden count can be worked out to within ' +
      `${policy.minimumWidth - 1} people.`,
    ...(agreement === null ? [] : [`Released in exact counts under the agreement: ${agreement}.`]),
  ];
}

/** Period, data cut and number. */
export function headLines(release: ProtectedRelease): readonly string[] {
  const { period, dataCut, releasedOn, correction } = release;
  return [
    `For ${release.commissionerName}, by ${release.teamName}`,
    `${period.kind === 'year' ? 'Financial year' : 'Financial quarter'} ${period.label}: ${day(period.firstDay)} to ${day(period.lastDay)}`,
    `Data cut ${day(dataCut)}. Release ${release.number}, made on ${day(releasedOn)}, by ${settingsWords(release)}`,
    ...(correction === null ? [] : [`Corrects release ${correction.ofNumber}. Reason: ${correction.reason}`]),
  ];
}

function settingsWords({ settingsVersion }: ProtectedRelease): string {
  return settingsVersion === 0
    ? 'the settings that every team begins with'
    : `version ${settingsVersion} of the team’s settings`;
}

/** A calendar date for readers. */
export function day(date: string): string {
  return britishDate(plainDate(date));
}
