import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Course } from '../../domain/pathway/course.js';
import type { Outcomes } from '../outcomes/outcomes-model.js';

export const LETTER_KINDS = ['gp', 'patient'] as const;
export type LetterKind = (typeof LETTER_KINDS)[number];

/** A part of a letter; pages and text show the same parts. */
export type LetterBlock =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | {
      readonly kind: 'table';
      readonly caption: string;
      readonly columns: readonly string[];
      readonly rows: readonly (readonly string[])[];
    }
  /** Lines to be filled in by hand. */
  | { readonly kind: 'signature'; readonly lines: readonly string[] };

/** A letter built from the record, to be checked and signed by a clinician before anybody receives it. */
export interface Letter {
  readonly kind: LetterKind;
  readonly title: string;
  readonly writtenOn: PlainDate;
  /** Version of the team's settings by which changes were judged. */
  readonly settingsVersion: number;
  readonly blocks: readonly LetterBlock[];
  /** For the clinician who checks the letter; no part of it. */
  readonly notes: readonly string[];
}

/** What a letter is built from: nothing in it is typed for the letter. */
export interface LetterInput {
  readonly person: {
    readonly givenName: string;
    readonly familyName: string;
    readonly bornOn: PlainDate;
    readonly nhsNumber: string | null;
  };
  readonly teamName: string;
  readonly course: Course;
  readonly outcomes: Outcomes;
}

/** What every letter tells those who check it. */
export const TO_BE_SIGNED =
  'To be checked and signed by a clinician before it is sent. The figures are computed from the record.';
