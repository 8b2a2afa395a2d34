import type { ProtectedRelease, ProtectedShare } from '../../domain/release/protected-release.js';
import { countInWords } from './release-words.js';

/** Three to seven sentences that say what the service did, for somebody who does not work in health care. */
export function releaseSentences(release: ProtectedRelease): readonly string[] {
  const total = (universe: string): string => {
    const found = release.totals.find((each) => each.universe === universe);
    return found === undefined ? 'a number that is not shown' : countInWords(found.count, release);
  };
  const span = release.period.kind === 'year' ? 'year' : 'quarter';
  return [
    `In this ${span} the service received ${total('received')} referrals; ${total('started')} people started the programme and ${total('discharged')} who had started were discharged.`,
    ...shareSentence(
      release,
      'started-within-90-days',
      'of those for whom it is decided started within 90 days of the referral',
    ),
    ...waitSentence(release),
    ...shareSentence(release, 'completed-of-assessed', 'of those assessed completed the programme'),
    ...shareSentence(release, 'completed-of-started', 'of those who started completed the programme'),
    ...changeSentences(release),
  ];
}

function shareSentence(release: ProtectedRelease, id: string, words: string): readonly string[] {
  const share = shareOf(release, id);
  if (share === undefined) return [];
  const { percent, interval, target } = share;
  if (percent === null || interval === null) {
    return target === null
      ? []
      : [
          `Not shown, since somebody could be recognised by it: how many ${words} (target ${target.percent} %).`,
        ];
  }
  const aim =
    target === null
      ? ''
      : ` The target is ${target.percent} %${standing(percent, interval, target.percent)}.`;
  return [`${percent} % ${words}.${aim}`];
}

function standing(
  percent: number,
  interval: { readonly low: number; readonly high: number },
  target: number,
): string {
  const verdict = percent >= target ? ': it is reached' : ': it is not reached';
  const isWithinChance = interval.low <= target && target <= interval.high;
  return isWithinChance ? `${verdict}, though so few people can miss or meet it by chance alone` : verdict;
}

function waitSentence({ summaries }: ProtectedRelease): readonly string[] {
  const wait = summaries.find(({ id }) => id === 'median-wait');
  return wait === undefined
    ? []
    : [`Half of those who started waited ${wait.value} days or fewer from the referral.`];
}

function changeSentences(release: ProtectedRelease): readonly string[] {
  return release.tables.flatMap(({ id, title, shares }) => {
    const [share] = shares;
    if (!id.startsWith('change.') || share?.percent === undefined || share.percent === null) return [];
    return [
      `${title.split(': ')[1] ?? title}: ${share.percent} % of those measured alike before and after were better by at least the smallest change that people notice.`,
    ];
  });
}

function shareOf({ tables }: ProtectedRelease, id: string): ProtectedShare | undefined {
  return tables.flatMap(({ shares }) => shares).find((share) => share.id === id);
}
