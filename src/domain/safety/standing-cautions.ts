import type { CheckedAssessment } from '../assessment/assessment.js';
import type { TeamSettings } from '../settings/team-settings.js';
import { cautionsOfAssessment } from './assessment-cautions.js';
import type { SafetyCaution } from './safety-caution.js';

/** Somebody has put a name to having seen a caution. */
export interface Acknowledgement {
  readonly cautionId: string;
  readonly measureId: string | null;
  readonly actionTaken: string;
  readonly acknowledgedAt: string;
  readonly acknowledgedBy: string;
}

/** A caution of an assessment as it stands in the record. */
export interface StandingCaution extends SafetyCaution {
  /** The present version would not raise it: a former one did, and a correction does not take it away. */
  readonly isFromFormerVersion: boolean;
  /** The first acknowledgement; null while there is none. */
  readonly acknowledgement: Acknowledgement | null;
}

/**
 * The cautions of an assessment over all its versions.
 *
 * A caution that must be acknowledged stands until it is, even when a correction of the score would no longer raise it.
 *
 * @param versions every version of the assessment, the current one last
 */
export function standingCautions(
  versions: readonly CheckedAssessment[],
  acknowledgements: readonly Acknowledgement[],
  settings: Pick<TeamSettings, 'restingLimits' | 'desaturationDefinition'>,
): readonly StandingCaution[] {
  const current = versions.at(-1);
  if (current === undefined) return [];
  const present = cautionsOfAssessment(current, settings);
  const seen = new Set(present.map(keyOf));
  const former = versions.slice(0, -1).flatMap((version) =>
    cautionsOfAssessment(version, settings).filter((caution) => {
      if (!caution.mustBeAcknowledged || seen.has(keyOf(caution))) return false;
      seen.add(keyOf(caution));
      return true;
    }),
  );
  const stands = (caution: SafetyCaution, isFromFormerVersion: boolean): StandingCaution => ({
    ...caution,
    isFromFormerVersion,
    acknowledgement:
      acknowledgements.find(
        (each) => each.cautionId === caution.id && each.measureId === caution.measureId,
      ) ?? null,
  });
  return [
    ...present.map((caution) => stands(caution, false)),
    ...former.map((caution) => stands(caution, true)),
  ];
}

function keyOf(caution: SafetyCaution): string {
  return `${caution.id} ${caution.measureId ?? ''}`;
}
