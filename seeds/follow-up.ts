import { addDays } from '../src/domain/calendar/plain-date.js';
import { planAssessment } from './assessments.js';
import { workingDay } from './calendar-of-classes.js';
import type { FurtherAbilities } from './further-tests.js';
import type { Ends } from './measurements.js';
import type { PlannedAssessment } from './plan.js';
import { chance, clamp, normal, wholeBetween } from './random.js';
import type { Random } from './random.js';
import type { StartedPart, VisitBasis } from './started-course.js';

/** Part of those who completed and were measured again; follow-up is offered, and few come (our own share). */
const FOLLOW_UP_SHARE = 0.3;
const DAYS_AFTER_DISCHARGE = { least: 150, most: 215 };

/** Of what was gained, what is left after half a year: gains fade over one to two years. */
const KEPT = { mean: 0.6, sd: 0.3 };

/** A visit about half a year after the discharge of somebody who completed; null for most. */
export function planFollowUp(
  basis: VisitBasis,
  course: Pick<StartedPart, 'discharge' | 'closure'> & { readonly baseline: PlannedAssessment | null },
): PlannedAssessment | null {
  const { discharge, closure, baseline } = course;
  const { random } = basis.further;
  if (discharge === null || closure?.reason !== 'completed' || !chance(random, FOLLOW_UP_SHARE)) return null;
  const days = wholeBetween(random, DAYS_AFTER_DISCHARGE.least, DAYS_AFTER_DISCHARGE.most);
  const assessedOn = workingDay(addDays(discharge.entry.assessedOn, days));
  const { abilities, further } = basis;
  return planAssessment(random, {
    ...basis,
    abilities: faded(random, abilities),
    further: { ...further, ...faded(random, endsOf(further)) },
    timepoint: 'follow-up',
    assessedOn,
    walkingAid: basis.person.body.walkingAid,
    courseLengthM: baseline?.entry.walkTests[0]?.courseLengthM ?? 30,
    baseline,
  });
}

function endsOf({ enduranceS, handgripKg, fourMetresS }: FurtherAbilities) {
  return { enduranceS, handgripKg, fourMetresS };
}

/** Each ability somewhere between what it was at baseline and at discharge, in the place of the discharge. */
function faded<Name extends string>(
  random: Random,
  abilities: Readonly<Record<Name, Ends>>,
): Readonly<Record<Name, Ends>> {
  const result: Record<Name, Ends> = { ...abilities };
  for (const name of Object.keys(abilities) as Name[]) {
    const { baseline, discharge } = abilities[name];
    const kept = clamp(0, 1, normal(random, KEPT.mean, KEPT.sd));
    result[name] = { baseline, discharge: baseline + kept * (discharge - baseline) };
  }
  return result;
}
