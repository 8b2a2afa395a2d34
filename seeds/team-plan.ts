import { financialYear, quarterOf } from '../src/domain/calendar/period.js';
import { addDays, addMonths, daysBetween, partsOf } from '../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import { classesOf, weekdayOf } from './calendar-of-classes.js';
import type { ClassCalendar } from './calendar-of-classes.js';
import { planCourse } from './course.js';
import { nhsNumbersOfTestRange } from './nhs-numbers.js';
import { planPerson } from './people.js';
import type { PlannedCourse, PlannedPerson } from './plan.js';
import { chance, pick, randomFor, wholeBetween } from './random.js';
import type { Random } from './random.js';
import { TEAMS } from './scenario.js';
import type { TeamScenario } from './scenario.js';

/** What a plan is made from; the same options give the same plan. */
export interface PlanOptions {
  readonly today: PlainDate;
  readonly seed: number;
  /** 1 is the whole scenario; 0.05 a twentieth of its referrals. */
  readonly scale: number;
  /** As many financial years, the last of them up to yesterday. */
  readonly financialYears: number;
}

export interface TeamPlan {
  readonly team: TeamScenario;
  readonly classes: ClassCalendar;
  /** In order of receipt. */
  readonly courses: readonly PlannedCourse[];
}

export interface DemoPlan {
  readonly firstDay: PlainDate;
  /** The evening before today: the work of today is not entered yet. */
  readonly lastDay: PlainDate;
  readonly teams: readonly TeamPlan[];
}

/** Longest course that can be: from receipt through the longest wait and programme, with room. */
const DAYS_AHEAD = 420;
const REFERRED_AGAIN_SHARE = 0.08;
const DAYS_UNTIL_REFERRED_AGAIN = 90;

/** Some financial years of both teams. */
export function planDemo(options: PlanOptions): DemoPlan {
  const firstDay = addMonths(financialYearStart(options.today), -12 * (options.financialYears - 1));
  const lastDay = addDays(options.today, -1);
  const nextNumber = nhsNumbersOfTestRange(options.seed);
  const teams = TEAMS.map((team) => planTeam(team, { ...options, firstDay, lastDay, nextNumber }));
  return { firstDay, lastDay, teams };
}

function planTeam(
  team: TeamScenario,
  plan: PlanOptions & {
    readonly firstDay: PlainDate;
    readonly lastDay: PlainDate;
    readonly nextNumber: () => string;
  },
): TeamPlan {
  const { seed, firstDay, lastDay } = plan;
  const classes = classesOf(team, { from: firstDay, to: addDays(lastDay, DAYS_AHEAD) }, seed);
  const random = randomFor(seed, `${team.key}/arrivals`);
  const courses: PlannedCourse[] = [];
  let formerCourses: PlannedCourse[] = [];
  for (const receivedOn of arrivalsOf(random, team, plan)) {
    const key = `${team.key}/${courses.length}`;
    const former = chance(random, REFERRED_AGAIN_SHARE)
      ? oneToReturn(random, formerCourses, receivedOn)
      : null;
    const own = randomFor(seed, key);
    const person: PlannedPerson =
      former?.person ?? planPerson(own, { key, receivedOn, nhsNumber: plan.nextNumber() });
    const isReferredAgain = former !== null;
    const further = randomFor(seed, `${key}/further`);
    const arrival = { key, team, classes, person, isReferredAgain, receivedOn, firstDay, further };
    const course = planCourse(own, arrival);
    if (former !== null) endBefore(courses, former, receivedOn);
    courses.push(course);
    formerCourses = [...formerCourses.filter((other) => other !== former), course];
  }
  return { team, classes, courses };
}

/** Days of receipt in order: as many as the team has in a year, on working days. */
function arrivalsOf(
  random: Random,
  team: TeamScenario,
  plan: { readonly firstDay: PlainDate; readonly lastDay: PlainDate; readonly scale: number },
): readonly PlainDate[] {
  const days: PlainDate[] = [];
  const length = daysBetween(plan.firstDay, plan.lastDay) + 1;
  const count = Math.round((team.referralsPerYear * plan.scale * length) / 365.25);
  while (days.length < count) {
    const day = addDays(plan.firstDay, wholeBetween(random, 0, length - 1));
    if (weekdayOf(day) < 5) days.push(day);
  }
  return days.sort();
}

/** A course long enough over that the person may be referred again. */
function oneToReturn(
  random: Random,
  formerCourses: readonly PlannedCourse[],
  receivedOn: PlainDate,
): PlannedCourse | null {
  const latest = addDays(receivedOn, -DAYS_UNTIL_REFERRED_AGAIN);
  const candidates = formerCourses.filter(
    ({ closure }) =>
      closure !== null && closure.recordedOn <= latest && !GONE.some((reason) => reason === closure.reason),
  );
  return candidates.length === 0 ? null : pick(random, candidates);
}

/** Who is referred again comes to no follow-up of the former course. */
function endBefore(courses: PlannedCourse[], former: PlannedCourse, receivedOn: PlainDate): void {
  const { followUp } = former;
  if (followUp === null || followUp.entry.assessedOn < receivedOn) return;
  courses[courses.indexOf(former)] = { ...former, followUp: null };
}

const GONE = ['died', 'moved-away', 'transferred', 'registered-in-error'] as const;

function financialYearStart(today: PlainDate): PlainDate {
  const { year, month } = partsOf(quarterOf(today).firstDay);
  return financialYear(month >= 4 ? year : year - 1).firstDay;
}
