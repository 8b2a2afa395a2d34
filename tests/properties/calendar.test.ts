// Oracle: Temporal (the ECMAScript calendar proposal) as its polyfill computes it, apart from the code under test.
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import {
  financialQuarter,
  financialYear,
  isWithin,
  latestClosedQuarter,
  parsePeriod,
  quarterOf,
} from '../../src/domain/calendar/period.js';
import {
  addDays,
  addMonths,
  ageInYears,
  daysBetween,
  daysInMonth,
  londonDateAt,
  parsePlainDate,
  plainDate,
} from '../../src/domain/calendar/plain-date.js';

const FIRST_DAY = Temporal.PlainDate.from('1800-01-01');
const SPAN_DAYS = FIRST_DAY.until('2999-12-31').days;

/** Any date of the calendar; leap days, month ends and year ends come up more often than by chance. */
const anyDate = fc.oneof(
  fc.integer({ min: 0, max: SPAN_DAYS }).map((days) => FIRST_DAY.add({ days })),
  fc
    .tuple(
      fc.integer({ min: 1801, max: 2998 }),
      fc.integer({ min: 1, max: 12 }),
      fc.integer({ min: -1, max: 1 }),
    )
    .map(([year, month, days]) => Temporal.PlainDate.from({ year, month, day: 1 }).add({ days })),
  fc.integer({ min: 1800, max: 2999 }).map((year) => Temporal.PlainDate.from({ year, month: 2, day: 29 })),
);

const ours = (date: Temporal.PlainDate): ReturnType<typeof plainDate> => plainDate(date.toString());

describe('dates agree with Temporal', () => {
  it('on which dates exist', () => {
    const part = (max: number): fc.Arbitrary<number> => fc.integer({ min: 0, max });
    fc.assert(
      fc.property(fc.integer({ min: 1800, max: 2999 }), part(14), part(33), (year, month, day) => {
        const text = `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
        expect(parsePlainDate(text) !== null).toBe(existsInTemporal(text));
      }),
      { numRuns: 500 },
    );
  });

  it('on days later and earlier', () => {
    fc.assert(
      fc.property(anyDate, anyDate, (from, to) => {
        const days = from.until(to, { largestUnit: 'day' }).days;
        expect(daysBetween(ours(from), ours(to))).toBe(days);
        expect(addDays(ours(from), days)).toBe(to.toString());
      }),
      { numRuns: 500 },
    );
  });

  it('on months later and earlier, the last day standing in for one that does not exist', () => {
    fc.assert(
      fc.property(anyDate, fc.integer({ min: -600, max: 600 }), (from, months) => {
        const to = from.add({ months });
        fc.pre(to.year >= 1800 && to.year <= 2999);
        expect(addMonths(ours(from), months)).toBe(to.toString());
      }),
      { numRuns: 500 },
    );
  });

  it('on the length of a month', () => {
    fc.assert(
      fc.property(anyDate, (date) => {
        expect(daysInMonth(date.year, date.month)).toBe(date.daysInMonth);
      }),
    );
  });

  it('on age in completed years', () => {
    fc.assert(
      fc.property(anyDate, anyDate, (one, other) => {
        const [born, on] = Temporal.PlainDate.compare(one, other) <= 0 ? [one, other] : [other, one];
        expect(ageInYears(ours(born), ours(on))).toBe(born.until(on, { largestUnit: 'year' }).years);
      }),
      { numRuns: 500 },
    );
  });

  it('on their order as text', () => {
    fc.assert(
      fc.property(anyDate, anyDate, (a, b) => {
        expect(Math.sign(Temporal.PlainDate.compare(a, b))).toBe(
          Number(ours(a) > ours(b)) - Number(ours(a) < ours(b)),
        );
      }),
    );
  });

  it('on the date in London at any instant', () => {
    const instant = fc.integer({ min: Date.UTC(1990, 0, 1), max: Date.UTC(2090, 0, 1) });
    fc.assert(fc.property(instant, expectSameLondonDate));
  });

  it('on the date in London at every half hour of the weekends on which the clocks change', () => {
    for (let year = 2020; year <= 2032; year += 1) {
      for (const month of [2, 9]) {
        const lastDay = Date.UTC(year, month, 31);
        const sunday = lastDay - new Date(lastDay).getUTCDay() * 86_400_000;
        for (let step = -48; step <= 96; step += 1) expectSameLondonDate(sunday + step * 1_800_000);
      }
    }
  });
});

describe('financial quarters', () => {
  const anyYear = fc.integer({ min: 1800, max: 2998 });

  it('tile the financial year without gap or overlap', () => {
    fc.assert(
      fc.property(anyYear, (startYear) => {
        const year = financialYear(startYear);
        const quarters = [1, 2, 3, 4].map((number) => financialQuarter(startYear, number));
        let nextDay = year.firstDay;
        for (const quarter of quarters) {
          expect(quarter.firstDay).toBe(nextDay);
          expect(quarter.lastDay > quarter.firstDay).toBe(true);
          nextDay = addDays(quarter.lastDay, 1);
        }
        expect(nextDay).toBe(addDays(year.lastDay, 1));
      }),
    );
  });

  it('follow one year upon the other', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1800, max: 2997 }), (startYear) => {
        expect(addDays(financialYear(startYear).lastDay, 1)).toBe(financialYear(startYear + 1).firstDay);
      }),
    );
  });

  it('hold exactly the dates that name them', () => {
    fc.assert(
      fc.property(anyDate, anyDate, (date, other) => {
        const quarter = quarterOf(ours(date));
        expect(isWithin(quarter, ours(date))).toBe(true);
        expect(isWithin(quarter, ours(other))).toBe(quarterOf(ours(other)).label === quarter.label);
      }),
      { numRuns: 500 },
    );
  });

  it('are read back from their label, and years from theirs', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1900, max: 2900 }),
        fc.integer({ min: 1, max: 4 }),
        (startYear, number) => {
          const [year, quarter] = [financialYear(startYear), financialQuarter(startYear, number)];
          expect(parsePeriod(quarter.label)).toEqual(quarter);
          expect(parsePeriod(year.label)).toEqual(year);
        },
      ),
    );
  });

  it('the latest closed one ended the day before the running one began', () => {
    fc.assert(
      fc.property(anyDate, (today) => {
        fc.pre(today.year > 1800);
        const closed = latestClosedQuarter(ours(today));
        expect(addDays(closed.lastDay, 1)).toBe(quarterOf(ours(today)).firstDay);
        expect(closed.lastDay < ours(today)).toBe(true);
      }),
    );
  });
});

function existsInTemporal(text: string): boolean {
  try {
    return Temporal.PlainDate.from(text).toString() === text;
  } catch {
    return false;
  }
}

function expectSameLondonDate(epochMilliseconds: number): void {
  const instant = Temporal.Instant.fromEpochMilliseconds(epochMilliseconds);
  const expected = instant.toZonedDateTimeISO('Europe/London').toPlainDate().toString();
  expect(londonDateAt(new Date(epochMilliseconds).toISOString())).toBe(expected);
}
