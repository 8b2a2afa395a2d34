import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { CourseDraft, CourseKey } from '../../domain/imports/course-draft.js';
import type { ImportedPart } from '../../domain/imports/import-record.js';
import type { JudgedRow, Judgement, RowVerdict, SaidOfCourse } from '../../domain/imports/judgement.js';
import type { Mapping } from '../../domain/imports/mapping.js';
import type { UnchainedEvent } from '../../storage/audit/audit-trail.js';
import type { Spool } from '../../storage/spool.js';
import type { Written } from '../../storage/written.js';
import type { AppliedCourse } from './apply-course.js';

/** A course as it was tried: by the rules of the record, with what it would write and tell put by. */
export interface TriedCourse {
  readonly course: CourseDraft;
  /** What is said of its rows. */
  readonly said: SaidOfCourse;
  /** Whom the record knows, or would know, the person by; null where it did not come to that. */
  readonly patientId: string | null;
  readonly parts: readonly ImportedPart[];
  readonly written: readonly Written[];
  readonly told: readonly UnchainedEvent[];
}

/** Whom a course is of: as the sheet says, and as the record knows them. */
export interface Whose {
  readonly key: CourseKey;
  readonly patientId: string | null;
}

/** The same of a course that was tried, with its verdict. */
export interface TriedWhose extends Whose {
  readonly verdict: RowVerdict;
}

/** A sheet that was tried: the verdict on its rows, and what carrying it out would write. */
export interface Trial {
  readonly judgement: Judgement;
  /** Of its rows those that belong to no course. */
  readonly aside: readonly JudgedRow[];
  readonly mapping: Mapping;
  /** Number of the last entry of the trail before it began: what came later it may not have seen. */
  readonly since: number;
  /** What it took for the time: it stands in everything that was put by. */
  readonly triedAt: string;
  readonly triedOn: PlainDate;
  readonly courses: () => Iterable<TriedCourse>;
  /** Whose courses they are, in the same order. */
  readonly whose: readonly TriedWhose[];
  /** Nothing of it is kept. */
  readonly close: () => void;
}

/** Courses that are put by: what they repeat of each other, the statements, is kept once. */
export interface PutBy {
  readonly add: (tried: TriedCourse) => void;
  readonly courses: () => Iterable<TriedCourse>;
}

/** Puts tried courses by in a spool. */
export function putBy(spool: Spool): PutBy {
  const texts = new Map<string, number>();
  const numberOf = (sql: string): number => {
    const number = texts.get(sql) ?? texts.size;
    texts.set(sql, number);
    return number;
  };
  return {
    add: ({ written, ...others }) => {
      const numbered = written.map(({ sql, parameters }) => [numberOf(sql), parameters]);
      spool.add(JSON.stringify({ ...others, written: numbered }));
    },
    *courses() {
      const sqlOf = [...texts.keys()];
      for (const line of spool.lines()) {
        // Written by add only.
        const { written, ...others } = JSON.parse(line) as Omit<TriedCourse, 'written'> & {
          readonly written: readonly (readonly [number, readonly unknown[]])[];
        };
        yield {
          ...others,
          written: written.map(([number, parameters]) => ({ sql: sqlOf[number] ?? '', parameters })),
        };
      }
    },
  };
}

/** What is said of the rows of a course. */
export function saidOf(applied: AppliedCourse): SaidOfCourse {
  if (applied.kind !== 'refused') return { verdict: applied.kind, faults: [] };
  return { verdict: applied.isUnusual ? 'unusual' : 'refused', faults: applied.faults };
}

/** What of a course was brought in. */
export function partsOf(applied: AppliedCourse): readonly ImportedPart[] {
  return applied.kind === 'refused' ? [] : applied.parts;
}
