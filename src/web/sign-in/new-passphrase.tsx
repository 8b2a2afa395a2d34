import { PASSPHRASE_LENGTH } from '../../domain/account/passphrase.js';
import { TextField } from '../components/text-fields.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';

/** A new passphrase, twice. What was typed is never sent back. */
export function NewPassphraseFields({ errors }: { readonly errors: FormErrors }): JSX.Element {
  const { min, max } = PASSPHRASE_LENGTH;
  return (
    <>
      <TextField
        name="passphrase"
        label="New passphrase"
        hint={`${min} to ${max} characters. Several words that do not belong together are easy to remember and hard to guess.`}
        error={errorAt(errors, 'passphrase')}
        type="password"
        autocomplete="new-password"
      />
      <TextField
        name="again"
        label="The new passphrase once more"
        error={errorAt(errors, 'again')}
        type="password"
        autocomplete="new-password"
      />
    </>
  );
}

/** What is said where the two are not the same. */
export const NOT_THE_SAME = { field: 'again', message: 'The two passphrases are not the same.' };
