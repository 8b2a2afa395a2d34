import type { RestingValues, WalkTestEntry } from '../assessment/assessment.js';
import type { DoneWalks } from './done-walks.js';
import type { RestingFinding, RestingLimit, RestingLimitsId } from './resting-limits.js';
import { describeLimit, restingFindings } from './resting-limits.js';
import type { SafetyCaution } from './safety-caution.js';
import { cautionToAcknowledge } from './safety-caution.js';

/**
 * Resting values beyond a limit: those of the assessment, and those at the start of each walk that was done.
 *
 * @returns one caution for each limit, with every value that lies beyond it
 */
export function restingCautions(
  resting: RestingValues | null,
  walks: readonly DoneWalks[],
  limits: RestingLimitsId,
): readonly SafetyCaution[] {
  const measured: readonly Measured[] = [
    ...(resting === null ? [] : [{ values: resting, oxygenLPerMin: oxygenOfWalks(walks), when: null }]),
    ...walks.flatMap(({ test, attempts }) =>
      attempts.map((walk) => ({
        values: atStart(walk),
        oxygenLPerMin: walk.oxygenLPerMin,
        when: `at the start of ${test.shortName} ${walk.attempt}`,
      })),
    ),
  ];
  const found = measured.flatMap(({ values, oxygenLPerMin, when }) =>
    restingFindings(values, { limits, oxygenLPerMin }).map((finding) => ({
      ...finding,
      when,
      oxygenLPerMin,
    })),
  );
  const reached = [...new Set(found.map((finding) => finding.limit))];
  return reached.map((limit) =>
    cautionOf(
      limit,
      found.filter((finding) => finding.limit === limit),
    ),
  );
}

interface Measured {
  readonly values: RestingValues;
  readonly oxygenLPerMin: number | null;
  /** In words; null for the resting values of the assessment itself. */
  readonly when: string | null;
}

function cautionOf(
  limit: RestingLimit,
  found: readonly (RestingFinding & Omit<Measured, 'values'>)[],
): SafetyCaution {
  const values = found.map(({ value, when }) =>
    [`${value} ${limit.unit}`, ...(when === null ? [] : [when])].join(' '),
  );
  const isAirNotKnown = limit.isOnRoomAirOnly && found.every((finding) => finding.oxygenLPerMin === null);
  const words = [
    `${limit.label} ${values.join(', ')}: ${describeLimit(limit)}, ${STRENGTH_WORDS[limit.strength]}.`,
    ...(limit.note === null ? [] : [limit.note]),
    ...(isAirNotKnown ? ['Whether it was on room air is not recorded.'] : []),
  ];
  return cautionToAcknowledge({
    id: limit.id,
    measureId: null,
    text: words.join(' '),
    citation: limit.citation,
  });
}

const STRENGTH_WORDS: Readonly<Record<RestingLimit['strength'], string>> = {
  absolute: 'an absolute contraindication to a walk test',
  relative: 'a relative contraindication to a walk test',
  local: 'a limit for starting',
};

function atStart(walk: WalkTestEntry): RestingValues {
  return {
    spo2Percent: walk.startSpo2Percent,
    heartRateBpm: walk.startHeartRateBpm,
    systolicMmHg: null,
    diastolicMmHg: null,
  };
}

/** The least oxygen with which a walk was done; null when it is not known that every walk was done with oxygen. */
function oxygenOfWalks(walks: readonly DoneWalks[]): number | null {
  const flows = walks.flatMap(({ attempts }) => attempts.map((walk) => walk.oxygenLPerMin));
  const known = flows.filter((flow) => flow !== null);
  if (known.includes(0)) return 0;
  return known.length === 0 || known.length < flows.length ? null : Math.min(...known);
}
