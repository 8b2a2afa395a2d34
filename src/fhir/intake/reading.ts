import { parsePlainDate } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Fault } from '../../domain/refusal/refusal.js';

/** An element that came and is not kept, so that whoever sent it can see what was left behind. */
export interface NotKept {
  /** JSON Pointer into the body. */
  readonly pointer: string;
  readonly message: string;
}

/** What is found while a body is read. */
export interface Findings {
  readonly faults: Fault[];
  readonly notKept: NotKept[];
}

/**
 * An element of a resource that is being read. Whatever nobody has asked for by the time it is closed is told as not kept.
 * A value of another type than the one that is asked for is a fault, and reads as null.
 */
export interface OpenElement {
  readonly pointer: string;
  /** JSON Pointer to a part of it. */
  readonly at: (name: string) => string;
  readonly has: (name: string) => boolean;
  readonly text: (name: string) => string | null;
  /** A list of texts, empty where it is absent. */
  readonly texts: (name: string) => readonly string[];
  readonly flag: (name: string) => boolean | null;
  readonly whole: (name: string) => number | null;
  /** A whole date without a time. */
  readonly date: (name: string) => PlainDate | null;
  readonly part: (name: string) => OpenElement | null;
  readonly parts: (name: string) => readonly OpenElement[];
  /** A text that says the same as what was read: it is read too when it is one of these, and else not kept. */
  readonly sameAs: (name: string, words: readonly string[]) => void;
  /** A name beside an id that was read: nothing is lost without it. */
  readonly label: (name: string) => void;
  /** It is not kept, whatever it holds. */
  readonly leave: (message?: string) => void;
  /** To be called once, of the outermost element, when everything was read. */
  readonly close: () => void;
}

const NO_PLACE = 'The record has no place for this.';

/**
 * Opens an element.
 *
 * @returns null, with a fault, for a value that is no object
 */
export function openElement(value: unknown, pointer: string, findings: Findings): OpenElement | null {
  if (!isObject(value)) {
    findings.faults.push({ pointer, code: 'invalid-type', message: 'Give an object.' });
    return null;
  }
  const read = new Set<string>();
  const inner: OpenElement[] = [];
  let left: string | null = null;
  const at = (name: string): string => `${pointer}/${escapePointer(name)}`;
  const fault = (where: string, message: string): null => {
    findings.faults.push({ pointer: where, code: 'invalid-type', message });
    return null;
  };
  const take = (name: string): unknown => {
    read.add(name);
    return Object.hasOwn(value, name) ? value[name] : undefined;
  };
  const open = (held: unknown, where: string): OpenElement | null => {
    const element = openElement(held, where, findings);
    if (element !== null) inner.push(element);
    return element;
  };
  const text = (name: string): string | null => {
    const held = take(name);
    if (held === undefined) return null;
    return typeof held === 'string' && held !== '' ? held : fault(at(name), 'Give a text.');
  };
  return {
    pointer,
    at,
    has: (name) => Object.hasOwn(value, name),
    text,
    texts: (name) => {
      const held = take(name);
      if (held === undefined) return [];
      if (Array.isArray(held) && held.every((item) => typeof item === 'string')) return held;
      fault(at(name), 'Give a list of texts.');
      return [];
    },
    flag: (name) => {
      const held = take(name);
      if (held === undefined) return null;
      return typeof held === 'boolean' ? held : fault(at(name), 'Give true or false.');
    },
    whole: (name) => {
      const held = take(name);
      if (held === undefined) return null;
      return Number.isSafeInteger(held) ? Number(held) : fault(at(name), 'Give a whole number.');
    },
    date: (name) => {
      const held = text(name);
      if (held === null) return null;
      return (
        parsePlainDate(held) ??
        fault(at(name), 'Give a whole date that exists, as YYYY-MM-DD, without a time.')
      );
    },
    part: (name) => {
      const held = take(name);
      return held === undefined ? null : open(held, at(name));
    },
    parts: (name) => {
      const held = take(name);
      if (held === undefined) return [];
      if (!Array.isArray(held)) {
        fault(at(name), 'Give a list.');
        return [];
      }
      return held.flatMap((item: unknown, index) => open(item, `${at(name)}/${index}`) ?? []);
    },
    sameAs: (name, words) => {
      const held = value[name];
      const isSame = (word: string): boolean =>
        typeof held === 'string' && word.toLowerCase() === held.toLowerCase();
      if (words.some(isSame)) read.add(name);
    },
    label: (name) => {
      read.add(name);
    },
    leave: (message = NO_PLACE) => {
      left = message;
    },
    close: () => {
      if (left !== null) {
        findings.notKept.push({ pointer, message: left });
        return;
      }
      for (const name of Object.keys(value)) {
        if (!read.has(name)) tellUnread(at(name), name, findings);
      }
      inner.forEach((element) => element.close());
    },
  };
}

/** What may change the meaning of all that stands beside it is not passed over. @source FHIR R4 (4.0.1), Extensibility */
function tellUnread(pointer: string, name: string, findings: Findings): void {
  if (name === 'modifierExtension' || name === 'implicitRules') {
    const message = 'This may change the meaning of what stands beside it, and is not understood here.';
    findings.faults.push({ pointer, code: 'not-understood', message });
  } else {
    findings.notKept.push({ pointer, message: NO_PLACE });
  }
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const LONGEST_NAME = 60;

function escapePointer(name: string): string {
  return name.slice(0, LONGEST_NAME).replaceAll('~', '~0').replaceAll('/', '~1');
}
