/**
 * Numbers that pages and PDF leave out on purpose, by what the definitions say of them. A kind is that of
 * `numbersOfReport`, or of a figure with the part of it that is left out.
 */
export const NOT_ON_PAPER: Readonly<Record<string, readonly RegExp[]>> = {
  'the steps of the waiting curve between the days of its table': [/^\/waiting\/clocks\[\]\/curve\[\]\//],
  'the centre of a chart': [/^\/trend\/charts\[\]\/centre$/],
  'the width of the classes of a spread': [/\/distribution\/classWidth$/],
  'mean and standard deviation of simple waits': [/\/daysOfThoseWhoReachedIt\/(?:mean|sd)$/],
  'medians and quartiles of both ends': [/\/(?:baseline|discharge)\/(?:median|lowerQuartile|upperQuartile)$/],
  'standard deviation of a change': [/\/(?:change|changeSummary)\/sd$/],
  'percentage and interval of those who wait, were seen so long, reached a step or left, or are not closed': [
    /^\/waiting\/now\/.*waiting (?:percentage|interval)$/,
    /^\/waiting\/clocks\[\]\/days\[\]\/(?:seenSoLong|startedByDay) (?:percentage|interval|bounds)$/,
    /^\/waits\[\]\/(?:reached|stillWaiting|left|passedOver) (?:percentage|interval)$/,
    /^\/cohorts\/\*\/notClosed (?:percentage|interval)$/,
  ],
  'interval and bounds of an earlier period': [/^\/comparisons\[\]\/shares\[\]\/then (?:interval|bounds)$/],
};
