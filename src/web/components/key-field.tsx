import { KEY_FIELD } from '../forms/once.js';
import { attributeText } from './field.js';

/** The key by which a form is carried out once, and the version of what it changes where it changes something. */
export function KeyField({ value }: { readonly value: string }): JSX.Element {
  return <input type="hidden" name={KEY_FIELD} value={attributeText(value)} />;
}

/** Name of the hidden field that says which version of a record the form was filled in from. */
export const VERSION_FIELD = 'version';

/** The version of the record that a form changes. */
export function VersionField({ version }: { readonly version: number }): JSX.Element {
  return <input type="hidden" name={VERSION_FIELD} value={String(version)} />;
}
