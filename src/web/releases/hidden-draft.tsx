import { attributeText } from '../components/field.js';
import { textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { CHOOSABLE, tableField } from './draft-form.js';

/** The same form as hidden fields, so that what was drafted is what is released. */
export function HiddenDraft({ form }: { readonly form: FormValues }): JSX.Element {
  const names = [
    'commissionerId',
    'period',
    'asAt-day',
    'asAt-month',
    'asAt-year',
    'mode',
    'agreement',
    'corrects',
    'reason',
    ...CHOOSABLE.map(({ id }) => tableField(id)),
  ];
  return (
    <>
      {names.map((name) => (
        <input type="hidden" name={name} value={attributeText(textOf(form, name))} />
      ))}
    </>
  );
}
