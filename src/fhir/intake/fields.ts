import { ACCEPTED_LINE, ACCEPTED_TEXT, TEXT_NOT_ACCEPTED } from '../../domain/text/accepted-text.js';
import type { Findings } from './reading.js';

/** Where each field of the record stood in what was sent, by its pointer in an entry, such as `/patient/bornOn`. */
export type Places = Map<string, string>;

/** What is gathered while a body is read. */
export interface Gathered extends Findings {
  readonly places: Places;
}

/** Tells that something is needed. @returns null, to be given back in its place */
export function needed({ faults }: Findings, pointer: string, message: string): null {
  faults.push({ pointer, code: 'needed', message });
  return null;
}

/** Tells that a value cannot be taken. @returns null, to be given back in its place */
export function notTaken({ faults }: Findings, pointer: string, message: string): null {
  faults.push({ pointer, code: 'invalid-value', message });
  return null;
}

/** A member of a closed set; null, with a fault, for anything else. */
export function memberAt<Member extends string>(
  findings: Findings,
  members: readonly Member[],
  { value, pointer }: { readonly value: string; readonly pointer: string },
): Member | null {
  const member = members.find((candidate) => candidate === value);
  return member ?? notTaken(findings, pointer, `Give one of: ${members.join(', ')}.`);
}

/** One line as the record takes it, trimmed; null, with a fault, where it is too long or has what is not accepted. */
export function acceptedLine(findings: Findings, typed: Typed): string | null {
  return accepted(findings, typed, ACCEPTED_LINE);
}

/** Text of several lines as the record takes it, trimmed; null, with a fault, as for a line. */
export function acceptedText(findings: Findings, typed: Typed): string | null {
  return accepted(findings, typed, ACCEPTED_TEXT);
}

interface Typed {
  readonly value: string;
  readonly pointer: string;
  readonly maxLength: number;
}

function accepted(findings: Findings, { value, pointer, maxLength }: Typed, pattern: RegExp): string | null {
  const text = value.trim();
  if (text === '' || text.length > maxLength) {
    return notTaken(findings, pointer, `Give 1 to ${maxLength} characters.`);
  }
  return pattern.test(text) ? text : notTaken(findings, pointer, TEXT_NOT_ACCEPTED);
}
