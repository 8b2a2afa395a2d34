/** Where a number stands in the list of all numbers: a column of the rows that say all this. */
export interface PlaceInList {
  readonly column: string;
  /** Texts by column. `{day}` is what the model says around the number; a star at the end, whatever follows. */
  readonly is: Readonly<Record<string, string>>;
}

type Is = PlaceInList['is'];
type Places = Readonly<Record<string, PlaceInList>>;

function at(column: string, is: Is): PlaceInList {
  return { column, is };
}

function ends(kind: string, is: Is): Places {
  return { [`${kind}/low`]: at('low', is), [`${kind}/high`]: at('high', is) };
}

/** Mean, spread and middle of some values. */
function summary(kind: string, is: Is, of = ''): Places {
  const value = (name: string) => at('value', { ...is, statistic: `${of}${of === '' ? '' : ', '}${name}` });
  return {
    [`${kind}/n`]: { ...value('mean'), column: 'n' },
    [`${kind}/mean`]: value('mean'),
    [`${kind}/sd`]: value('standard deviation'),
    [`${kind}/median`]: value('median'),
    [`${kind}/lowerQuartile`]: value('lower quartile'),
    [`${kind}/upperQuartile`]: value('upper quartile'),
  };
}

function change(kind: string, is: Is): Places {
  const mean = { ...is, statistic: 'mean change' };
  return {
    [`${kind}/n`]: at('n', mean),
    [`${kind}/mean`]: at('value', mean),
    ...ends(`${kind}/interval`, mean),
    [`${kind}/sd`]: at('value', { ...is, statistic: 'change, standard deviation' }),
    [`${kind}/standardisedResponseMean`]: at('value', { ...is, statistic: 'standardised response mean' }),
  };
}

function pairs(kind: string, is: Is): Places {
  return {
    [`${kind}/pairs`]: at('n', { ...is, statistic: 'mean change' }),
    ...summary(`${kind}/baseline`, is, 'baseline'),
    ...summary(`${kind}/discharge`, is, 'discharge'),
    ...summary(`${kind}/changeSummary`, is, 'change'),
    ...change(`${kind}/change`, is),
  };
}

function threshold(kind: string): Places {
  const is = { section: 'outcomes', title: '{shortName}: threshold of {purpose}', group: '{chosenBy}' };
  const value = { ...is, ruleId: '{thresholdId}', statistic: 'threshold' };
  return {
    [`${kind}/value`]: at('value', value),
    [`${kind}/pairs`]: at('n', value),
    [`${kind}/pairsOfAnotherDiagnosis`]: at('value', {
      ...is,
      ruleId: '{thresholdId}',
      statistic: 'judged, of a diagnosis that it was not found in',
    }),
  };
}

const OUTCOMES = { section: 'outcomes' };
const LIKE_FOR_LIKE = { ...OUTCOMES, group: 'like for like' };
const CLOCK = { section: 'waiting', group: '{title}' };
const INCIDENCE = { ...CLOCK, statistic: 'cumulative incidence' };
const CURVE = { section: 'waiting-curve', group: '{title}' };
const COHORT = { section: 'cohorts', group: '{kind}' };
const ALL_RECEIVED = { section: 'cohorts', group: 'referral' };
const RESPONDERS = {
  ...OUTCOMES,
  title: '{shortName}: reached the threshold, with what those not measured again could make of it',
};
const MEASURED_AGAIN = {
  ...OUTCOMES,
  title: '{shortName}: measured again like for like, of those with a baseline result',
};
const PREDICTED = { section: 'percent-predicted', title: '{shortName}', ruleId: '{equationId}' };
const QUALITY = { section: 'data-quality' };
const IN_ERROR = { ...QUALITY, ruleId: 'entries-in-error@1' };
const EARLIER = {
  section: 'comparisons',
  group: '{period.label}, data cut {asAt}',
  figureId: '{figureId}',
};
const OF_GROUP = { section: 'breakdowns', figureId: '{figure.id}', statistic: 'difference to the rest' };
const PUBLISHED = { section: 'benchmarks', ruleId: '{id}', group: '{population}' };
const CHART = { section: 'trend', title: '{title}', figureId: '{figureId}' };
const POINT = { ...CHART, group: '{quarter}' };

/** Where each number of the model stands that is no part of a counted share, by its kind. */
export const PLACES_OF_NUMBERS: Places = {
  '/settingsVersion': at('settingsVersion', {}),
  '/cohorts/*/referrals': at('value', { ...COHORT, statistic: 'referrals' }),
  '/cohorts/*/people': at('value', { ...COHORT, statistic: 'people' }),
  '/cohorts/*/registeredInError': at('value', { ...COHORT, statistic: 'registered in error' }),
  '/referrals/received': at('value', { ...ALL_RECEIVED, statistic: 'referrals' }),
  '/referrals/people': at('value', { ...ALL_RECEIVED, statistic: 'people' }),
  '/waiting/clocks[]/referrals': at('n', { ...CLOCK, statistic: 'not yet ended' }),
  '/waiting/clocks[]/days[]/atRisk': at('numerator', { figureId: '{seenSoLong.id}', statistic: 'share' }),
  '/waiting/clocks[]/days[]/started/percent': at('value', { ...INCIDENCE, title: 'Started by day {day}' }),
  ...ends('/waiting/clocks[]/days[]/started/interval', { ...INCIDENCE, title: 'Started by day {day}' }),
  '/waiting/clocks[]/days[]/leftBy[]/percent': at('value', { ...INCIDENCE, title: 'By day {day}: {words}' }),
  '/waiting/clocks[]/days[]/stillWaitingPercent': at('value', {
    ...CLOCK,
    title: 'Still waiting on day {day}',
  }),
  '/waiting/clocks[]/curve[]/startedPercent': at('value', { ...CURVE, title: 'Started by day {day}' }),
  '/waiting/clocks[]/curve[]/leftPercent': at('value', {
    ...CURVE,
    title: 'Left without a start by day {day}',
  }),
  '/waiting/now/longest[]/days': at('value', { title: 'The longest waits now', group: 'number {number}' }),
  ...summary('/waits[]/daysOfThoseWhoReachedIt', { section: 'waits', figureId: '{reached.id}' }),
  '/waits[]/longestStillWaitingDays': at('value', {
    section: 'waits',
    figureId: '{stillWaiting.id}',
    statistic: 'longest still waiting',
  }),
  ...pairs('/outcomes[]/likeForLike', { ...LIKE_FOR_LIKE, figureId: '{likeForLikePairsOverStarters.id}' }),
  ...pairs('/outcomes[]/allPairs', { ...OUTCOMES, group: 'all pairs', figureId: '{pairsOverStarters.id}' }),
  ...pairs('/outcomes[]/atHome', {
    ...OUTCOMES,
    group: 'like for like, at home',
    figureId: 'pairs-at-home.{measureId}',
  }),
  '/outcomes[]/distribution/classes[]/from': at('low', { ...LIKE_FOR_LIKE, figureId: '{figureId}' }),
  '/outcomes[]/distribution/classes[]/to': at('high', { ...LIKE_FOR_LIKE, figureId: '{figureId}' }),
  '/outcomes[]/distribution/classes[]/pairs': at('value', { ...LIKE_FOR_LIKE, figureId: '{figureId}' }),
  '/outcomes[]/differences[]/pairs': at('value', { ...OUTCOMES, figureId: '{figureId}', statistic: 'count' }),
  '/outcomes[]/practiceWalkDiffers': at('value', {
    ...OUTCOMES,
    title: '{shortName}: Pairs with a practice walk at one end only',
  }),
  '/outcomes[]/pairsAtCeiling': at('value', {
    ...OUTCOMES,
    title: '{shortName}: Pairs with a result at the ceiling',
  }),
  '/outcomes[]/responders/achieved': at('numerator', RESPONDERS),
  '/outcomes[]/responders/measured': at('denominator', RESPONDERS),
  '/outcomes[]/responders/worst': at('worst', RESPONDERS),
  '/outcomes[]/responders/best': at('best', RESPONDERS),
  '/outcomes[]/responders/eligible': at('denominator', MEASURED_AGAIN),
  '/outcomes[]/responders/measuredShare': at('value', MEASURED_AGAIN),
  ...threshold('/outcomes[]/thresholds[]'),
  ...threshold('/definitions/thresholds[]'),
  '/definitions/equations[]/agesStudiedYears/min': at('low', {
    ruleId: '{equationId}',
    statistic: 'ages studied',
  }),
  '/definitions/equations[]/agesStudiedYears/max': at('high', {
    ruleId: '{equationId}',
    statistic: 'ages studied',
  }),
  '/percentPredicted[]/pairs': at('n', { ...PREDICTED, statistic: 'beyond the ages studied' }),
  ...summary('/percentPredicted[]/baseline', PREDICTED, 'baseline'),
  ...summary('/percentPredicted[]/discharge', PREDICTED, 'discharge'),
  '/percentPredicted[]/belowLowerLimit/baseline': at('value', {
    ...PREDICTED,
    statistic: 'below the lower limit of normal at baseline',
  }),
  '/percentPredicted[]/belowLowerLimit/discharge': at('value', {
    ...PREDICTED,
    statistic: 'below the lower limit of normal at discharge',
  }),
  '/percentPredicted[]/beyondAgesStudied': at('value', {
    ...PREDICTED,
    statistic: 'beyond the ages studied',
  }),
  '/percentPredicted[]/notPredicted[]/pairs': at('value', {
    ...PREDICTED,
    statistic: 'not predicted: {reason}',
  }),
  '/indicators[]/target/percent': at('target', { section: 'indicators', figureId: '{figure.id}' }),
  '/breakdowns[]/dimensions[]/rows[]/differenceToRest/points': at('value', OF_GROUP),
  ...ends('/breakdowns[]/dimensions[]/rows[]/differenceToRest/interval', OF_GROUP),
  ...ends('/sites[]/sites[]/limits/inner', {
    section: 'sites',
    figureId: '{figure.id}',
    statistic: '95 % limits of the funnel',
  }),
  ...ends('/sites[]/sites[]/limits/outer', {
    section: 'sites',
    figureId: '{figure.id}',
    statistic: '99.8 % limits of the funnel',
  }),
  '/benchmarks[]/published/percent': at('value', { ...PUBLISHED, statistic: 'published' }),
  '/benchmarks[]/published/n': at('n', { ...PUBLISHED, statistic: 'published' }),
  ...change('/benchmarkMeans[]/own', { ...LIKE_FOR_LIKE, figureId: '{figureId}' }),
  '/benchmarkMeans[]/published/mean': at('value', { ...PUBLISHED, statistic: 'published mean change' }),
  '/benchmarkMeans[]/published/n': at('n', { ...PUBLISHED, statistic: 'published mean change' }),
  ...ends('/benchmarkMeans[]/published/interval', { ...PUBLISHED, statistic: 'published mean change' }),
  '/benchmarkMeans[]/published/sd': at('value', { ...PUBLISHED, statistic: 'published standard deviation' }),
  '/dataQuality/pairsLost[]/starters': at('n', { ...QUALITY, figureId: '{figureId}', statistic: 'count' }),
  '/dataQuality/pairsLost[]/pairs': at('value', { ...QUALITY, figureId: '{figureId}', statistic: 'count' }),
  '/dataQuality/pairsLost[]/lost[]/referrals': at('value', {
    ...QUALITY,
    figureId: '{figureId}',
    statistic: 'count',
  }),
  '/dataQuality/gradesConverted[]/pairs': at('numerator', { ...QUALITY, figureId: '{figureId}' }),
  '/dataQuality/gradesConverted[]/ofPairs': at('denominator', { ...QUALITY, figureId: '{figureId}' }),
  '/dataQuality/entriesInError/referrals': at('value', { ...IN_ERROR, unit: 'referrals' }),
  '/dataQuality/entriesInError/offers': at('value', { ...IN_ERROR, unit: 'offers' }),
  '/dataQuality/entriesInError/sessions': at('value', { ...IN_ERROR, unit: 'sessions' }),
  '/dataQuality/entriesInError/assessments': at('value', { ...IN_ERROR, unit: 'assessments' }),
  '/dataQuality/mendFirst[]/referrals': at('value', {
    ...QUALITY,
    title: '{words}',
    figureId: '{figureId}',
    statistic: 'to mend',
  }),
  '/comparisons[]/shares[]/difference/points': at('value', { ...EARLIER, unit: 'percentage points' }),
  ...ends('/comparisons[]/shares[]/difference/interval', { ...EARLIER, unit: 'percentage points' }),
  '/comparisons[]/means[]/now/n': at('n', {
    ...LIKE_FOR_LIKE,
    figureId: '{figureId}',
    statistic: 'mean change',
  }),
  '/comparisons[]/means[]/now/mean': at('value', {
    ...LIKE_FOR_LIKE,
    figureId: '{figureId}',
    statistic: 'mean change',
  }),
  '/comparisons[]/means[]/now/sd': at('value', {
    ...LIKE_FOR_LIKE,
    figureId: '{figureId}',
    statistic: 'change, standard deviation',
  }),
  '/comparisons[]/means[]/then/n': at('n', { ...EARLIER, statistic: 'mean' }),
  '/comparisons[]/means[]/then/mean': at('value', { ...EARLIER, statistic: 'mean' }),
  '/comparisons[]/means[]/then/sd': at('value', { ...EARLIER, statistic: 'standard deviation' }),
  '/comparisons[]/means[]/difference/value': at('value', { ...EARLIER, statistic: 'difference to {words}' }),
  ...ends('/comparisons[]/means[]/difference/interval', { ...EARLIER, statistic: 'difference to {words}' }),
  '/trend/charts[]/centre': at('value', { ...CHART, statistic: 'centre of the *' }),
  '/trend/charts[]/lowerLimitCutAt': at('value', { ...CHART, statistic: 'where the lower limit is cut off' }),
  '/trend/charts[]/points[]/n': at('n', POINT),
  '/trend/charts[]/points[]/numerator': at('numerator', POINT),
  '/trend/charts[]/points[]/value': at('value', POINT),
  '/trend/charts[]/points[]/lower': at('low', POINT),
  '/trend/charts[]/points[]/upper': at('high', POINT),
};

/** Days that the titles of other rows name: a row would not be found if it named another. */
export const NAMES_OF_ROWS: readonly string[] = [
  '/waiting/clocks[]/days[]/day',
  '/waiting/clocks[]/curve[]/day',
];

/** What the list leaves out, and why. */
export const NOT_IN_LIST: Readonly<Record<string, string>> = {
  '/outcomes[]/distribution/classWidth': 'The ends of the classes say it.',
  '/waiting/now/overDays[]/days': 'The figure of those who wait for longer is named by it.',
};
