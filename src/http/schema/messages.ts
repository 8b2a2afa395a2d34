import { z } from 'zod';

/** Makes zod say in plain words what is wrong with a value, and what would be right. */
export function installMessages(): void {
  z.config({ customError: (issue) => messageFor(issue) });
}

const KINDS: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
};

function messageFor(issue: z.core.$ZodRawIssue): string | undefined {
  switch (issue.code) {
    case 'invalid_type':
      if (issue.input === undefined) return 'This field is needed.';
      return `Give ${KINDS[issue.expected] ?? issue.expected}.`;
    case 'unrecognized_keys':
      // One message stands at each of the keys: it must not name them all.
      return 'There is no such field here.';
    case 'invalid_value':
      return `Give one of: ${issue.values.map(String).join(', ')}.`;
    case 'invalid_format':
      if (issue.format === 'date') return 'Give a date that exists, as YYYY-MM-DD.';
      return issue.format === 'uuid' ? 'Give an id as the service gave it out.' : undefined;
    case 'too_small':
      return `Give at least ${String(issue.minimum)}${SIZES[issue.origin] ?? ''}.`;
    case 'too_big':
      return `Give at most ${String(issue.maximum)}${SIZES[issue.origin] ?? ''}.`;
    case 'invalid_union':
    case 'invalid_key':
    case 'invalid_element':
    case 'not_multiple_of':
    case 'custom':
      return undefined;
  }
}

const SIZES: Readonly<Record<string, string>> = { string: ' characters', array: ' entries' };
