import { britishDate } from '../src/domain/calendar/british-date.js';
import { addDays } from '../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import type { Context } from '../src/usecases/context.js';
import { eventsOf } from './events.js';
import type { DemoEvent } from './events.js';
import { hold, need, perform } from './perform.js';
import type { Desk } from './perform.js';
import { setUp } from './set-up.js';
import type { DemoAccounts } from './set-up.js';
import { planDemo } from './team-plan.js';
import type { TeamPlan } from './team-plan.js';

export { DEMO_PASSPHRASE } from './set-up.js';
export type { DemoAccount, DemoAccounts, DemoTeam } from './set-up.js';

export interface DemoOptions {
  /** Everything is entered up to the evening before. */
  readonly today: PlainDate;
  /** Same seed and same today: same data, ids and tokens aside. */
  readonly seed: number;
  /** 1 (the default) is the whole scenario, about 500 referrals a year; 0.05 a twentieth of them. */
  readonly scale?: number;
  /** 3 by default, the last of them up to yesterday. */
  readonly financialYears?: number;
  readonly onProgress?: (done: number, total: number, words: string) => void;
}

const TOKEN_DAYS = 90;
const CLASSES_AHEAD_DAYS = 7;
const EVENTS_PER_REPORT = 100;

/**
 * Builds the invented scenario *Marram Coast* in an empty record, through the use cases that the API calls.
 *
 * The clock of each entry stands at the day of the entry. The classes of the coming week are on the calendar, their
 * registers empty.
 *
 * @throws Error naming the refusal when the service refuses an entry
 */
export async function buildDemo(context: Context, options: DemoOptions): Promise<DemoAccounts> {
  const { today, seed, scale = 1, financialYears = 3, onProgress } = options;
  const plan = planDemo({ today, seed, scale, financialYears });
  const expiresAt = instantOn(addDays(today, TOKEN_DAYS), 0);
  const { demo, desks } = await setUp(onDay(context, plan.firstDay, 0), expiresAt);
  const days = plan.teams.map((team) => ({ team, events: eventsOf(team, plan.lastDay) }));
  const total = days.reduce((sum, { events }) => sum + events.length, 0);
  let done = 0;
  for (const { team, events } of days) {
    const desk = desks.get(team.team.key);
    if (desk === undefined) throw new Error(`The scenario does not set up ${team.team.name}.`);
    await enterAll(context, desk, events, (event) => {
      done += 1;
      if (done % EVENTS_PER_REPORT === 0 || done === total) {
        onProgress?.(done, total, `${team.team.name}, ${monthOf(event.on)}`);
      }
    });
    await holdClassesAhead(onDay(context, plan.lastDay, MINUTES_OF_WORK), desk, team, today);
  }
  return demo;
}

async function enterAll(
  context: Context,
  desk: Desk,
  events: readonly DemoEvent[],
  onEntered: (event: DemoEvent) => void,
): Promise<void> {
  let minute = 0;
  let day: PlainDate | null = null;
  for (const event of events) {
    minute = event.on === day ? Math.min(minute + 1, MINUTES_OF_WORK) : 0;
    day = event.on;
    await perform(onDay(context, event.on, minute), desk, event.deed);
    onEntered(event);
  }
}

/** Empty registers for the classes of the coming week. */
async function holdClassesAhead(
  context: Context,
  desk: Desk,
  { classes }: TeamPlan,
  today: PlainDate,
): Promise<void> {
  const until = addDays(today, CLASSES_AHEAD_DAYS);
  const ahead = [...classes.values()].flat().filter(({ heldOn }) => heldOn >= today && heldOn < until);
  for (const session of ahead) need('hold a class ahead', await hold(context, desk, session));
}

const FIRST_HOUR = 8;
const MINUTES_OF_WORK = 9 * 60;

/** The same context with a clock that stands at a day, some minutes after eight in the morning (UTC). */
function onDay(context: Context, day: PlainDate, minute: number): Context {
  const instant = instantOn(day, minute);
  return { ...context, clock: { now: () => instant, today: () => day } };
}

function instantOn(day: PlainDate, minute: number): string {
  const hour = String(FIRST_HOUR + Math.floor(minute / 60)).padStart(2, '0');
  return `${day}T${hour}:${String(minute % 60).padStart(2, '0')}:00.000Z`;
}

function monthOf(day: PlainDate): string {
  return britishDate(day).split(' ').slice(1).join(' ');
}
