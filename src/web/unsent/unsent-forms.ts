import { laterBy } from '../../domain/calendar/instant.js';
import type { Clock } from '../../usecases/context.js';
import { CSRF_FIELD } from '../csrf.js';
import { FORM_KEY_FIELD } from '../forms/form-key-field.js';
import type { FormValues } from '../forms/form-values.js';

/** A form that was sent after the session had ended: nothing of it was stored in the record. */
export interface UnsentForm {
  /** Where it was sent. */
  readonly action: string;
  /** Address of the page that it stands on; null where it cannot be known. */
  readonly page: string | null;
  readonly fields: FormValues;
  readonly keptAt: string;
}

/** So long a form waits for its sender. */
export const UNSENT_KEPT_S = 3600;
const MOST_OF_ONE_PERSON = 5;
const MOST_OF_ALL = 100;

/** What is never kept: whatever lets somebody sign in. */
export const SECRET_FIELDS: readonly string[] = ['passphrase', 'again', 'currentPassphrase', 'code'];

/** Forms that wait in memory, each for the one account whose session had ended. */
export interface UnsentForms {
  /** Keeps a form; false where it holds a secret or nothing at all. */
  readonly keep: (accountId: string, form: Omit<UnsentForm, 'keptAt'>) => boolean;
  /** The forms that wait for an account, the latest first. */
  readonly of: (accountId: string) => readonly UnsentForm[];
  /** Forgets those that were sent to an address, or to one directly above or below it: they have been sent again. */
  readonly forget: (accountId: string, action: string) => void;
}

/** An empty keeping of forms; it is gone when the service ends. */
export function unsentForms(clock: Clock): UnsentForms {
  let kept: readonly (UnsentForm & { readonly accountId: string })[] = [];
  const alive = () => kept.filter(({ keptAt }) => clock.now() < laterBy(keptAt, UNSENT_KEPT_S));
  return {
    keep: (accountId, { action, page, fields }) => {
      const typed = typedFields(fields);
      if (typed.size === 0 || SECRET_FIELDS.some((name) => fields.has(name))) return false;
      const form = { accountId, action, page, fields: typed, keptAt: clock.now() };
      const others = alive().filter((each) => each.accountId !== accountId || each.action !== action);
      const own = others.filter((each) => each.accountId === accountId).slice(0, MOST_OF_ONE_PERSON - 1);
      const ofOthers = others.filter((each) => each.accountId !== accountId);
      kept = [form, ...own, ...ofOthers].slice(0, MOST_OF_ALL);
      return true;
    },
    of: (accountId) => {
      kept = alive();
      return kept.filter((each) => each.accountId === accountId);
    },
    forget: (accountId, action) => {
      kept = alive().filter((each) => each.accountId !== accountId || !isNear(each.action, action));
    },
  };
}

/** All fields but those by which the page itself was known. */
function typedFields(fields: FormValues): FormValues {
  return new Map([...fields].filter(([name]) => name !== CSRF_FIELD && name !== FORM_KEY_FIELD));
}

function isNear(one: string, other: string): boolean {
  return one === other || above(one) === other || one === above(other);
}

/** The address one step above. @example above('/account/second-factor') -> '/account' */
export function above(path: string): string {
  return path.replace(/\/[^/]*$/, '');
}
