import { COLUMNS, findColumn } from '../../domain/imports/columns.js';
import type { MappingChoices } from '../../domain/imports/mapping.js';
import { tightKey } from '../../domain/imports/words.js';
import type { ImportView } from '../../usecases/imports/view-import.js';
import type { FormError, FormErrors } from '../forms/form-errors.js';
import { isTicked, textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { columnField, feetField } from './columns-form.js';

/** What a form says of the columns, or what is wrong with it. */
export type SaidOfColumns =
  | { readonly kind: 'choices'; readonly choices: MappingChoices }
  | { readonly kind: 'errors'; readonly errors: FormErrors };

/** Reads what a form says of the columns of a sheet; a column is named by its label or its id. */
export function choicesOf(form: FormValues, { sheet }: ImportView): SaidOfColumns {
  const errors: FormError[] = [];
  const columns: Record<string, string | null> = {};
  const inFeet: string[] = [];
  for (const { heading, position } of sheet?.mapping.columns ?? []) {
    if (heading === '') continue;
    const typed = textOf(form, columnField(position));
    const column = typed === '' ? null : (findColumn(typed) ?? byLabel(typed));
    if (column === undefined)
      errors.push({
        field: columnField(position),
        message: `There is no column "${typed.slice(0, 60)}". Choose one of the list, or leave the field empty.`,
      });
    else columns[heading] = column?.id ?? null;
    if (isTicked(form, feetField(position))) inFeet.push(heading);
  }
  if (errors.length > 0) return { kind: 'errors', errors };
  const [order, siteId] = [textOf(form, 'dateOrder'), textOf(form, 'siteId')];
  const dateOrder = order === 'day-first' || order === 'month-first' ? order : null;
  return { kind: 'choices', choices: { columns, inFeet, dateOrder, siteId: siteId === '' ? null : siteId } };
}

function byLabel(typed: string): (typeof COLUMNS)[number] | undefined {
  const key = tightKey(typed);
  return COLUMNS.find(({ label }) => tightKey(label) === key);
}
