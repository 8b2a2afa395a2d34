import type { Fault } from '../../domain/refusal/refusal.js';
import { LEFT_OUT } from '../../domain/release/settle.js';
import type { TableChoices } from '../../domain/release/settle.js';
import { TABLES, TWO_WAY_TABLES } from '../../domain/release/tables/table-list.js';
import type { ReleaseRequest } from '../../usecases/releases/release-request.js';
import { readDate, typedDateOf } from '../forms/date-entry.js';
import type { FormError, FormErrors } from '../forms/form-errors.js';
import { errorsOf } from '../forms/form-errors.js';
import { textOf, wholeNumberOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { reasonFault } from '../forms/line.js';

/** Every table that can be merged or left out, with its name in the form. */
export const CHOOSABLE = [
  ...TABLES.map(({ id, title, codeLists, shares }) => ({
    id,
    title,
    codeLists,
    hasPercentages: shares.length > 0,
  })),
  ...TWO_WAY_TABLES.map(({ id, title, rows }) => ({
    id,
    title,
    codeLists: rows.codeLists,
    hasPercentages: false,
  })),
];

/** Name of the field of a table. */
export function tableField(tableId: string): string {
  return `table-${tableId}`;
}

/** What the form asks for, or what is wrong with it; the use case then judges what can be judged there. */
export function readDraftForm(
  form: FormValues,
  mergeAsProposed: boolean,
):
  | { readonly kind: 'request'; readonly request: ReleaseRequest }
  | { readonly kind: 'faulty'; readonly errors: FormErrors } {
  const errors: FormError[] = [];
  const asAt = readDate(typedDateOf(form, 'asAt'));
  if (asAt.kind === 'no-date') errors.push({ field: 'asAt', message: asAt.message });
  const number = wholeNumberOf(form, 'corrects');
  const reason = textOf(form, 'reason');
  if (textOf(form, 'corrects') !== '' && number === null) {
    errors.push({ field: 'corrects', message: 'Give the number of the release.' });
  }
  const reasonError = number === null ? null : reasonFault('reason', reason);
  if (reasonError !== null) errors.push(reasonError);
  if (errors.length > 0) return { kind: 'faulty', errors };
  const request: ReleaseRequest = {
    commissionerId: textOf(form, 'commissionerId'),
    period: textOf(form, 'period'),
    asAt: asAt.kind === 'date' ? asAt.date : undefined,
    mode: textOf(form, 'mode') === 'exact' ? 'exact' : 'rounded',
    agreement: textOf(form, 'agreement') === '' ? undefined : textOf(form, 'agreement'),
    tables: choicesOf(form),
    mergeAsProposed,
    corrects: number === null ? undefined : { number, reason },
  };
  return { kind: 'request', request };
}

/** A form with other choices of tables, such as those taken up from the attack. */
export function withChoices(form: FormValues, choices: TableChoices): FormValues {
  const entries = Object.entries(choices).map(([id, list]) => [tableField(id), [list]] as const);
  return new Map([...form, ...entries]);
}

/** The faults that the use case found, at the fields of the form. */
export function draftErrors(faults: readonly Fault[]): FormErrors {
  return errorsOf(faults, (pointer) => {
    const [, part = '', key = ''] = pointer.split('/');
    return part === 'tables' ? tableField(key) : part;
  });
}

function choicesOf(form: FormValues): TableChoices {
  const chosen = CHOOSABLE.flatMap(({ id, codeLists, hasPercentages }) => {
    const list = textOf(form, tableField(id));
    const isDefault = list === '' || (!hasPercentages && list === codeLists[0].id);
    return isDefault ? [] : [[id, list] as const];
  });
  return Object.fromEntries(chosen);
}

/** How a table may be printed, in words. */
export function listChoices(codeLists: (typeof CHOOSABLE)[number]['codeLists']): readonly {
  readonly value: string;
  readonly label: string;
}[] {
  const lists = codeLists.map(({ id, cells }, index) => ({
    value: id,
    label: `${index === 0 ? 'Finest' : 'Merged'}: ${cells.length} groups`,
  }));
  return [...lists, { value: LEFT_OUT, label: 'Left out' }];
}
