import type { FormValues } from '../forms/form-values.js';
import { escaped, tagsOf, written } from './form-text.js';
import type { Tag } from './form-text.js';

/** What became of trying to fill a form of a page. */
export type Filled =
  | { readonly kind: 'filled'; readonly html: string }
  /** The page has no form that is sent there, or none with a place for every field. */
  | { readonly kind: 'no-form' | 'no-room' };

/**
 * Puts what was typed into the form of a page that is sent to an address, as the browser would show it: fields that are not
 * seen too, so that what was typed stays based on the version that it was typed from. Passphrases and files stay empty.
 */
export function fillForm(html: string, action: string, fields: FormValues): Filled {
  const forms = formsSentTo(html, action);
  const form = forms.find((controls) => hasRoom(controls, fields));
  if (form === undefined) return { kind: forms.length === 0 ? 'no-form' : 'no-room' };
  let text = html;
  // From the end, so that what stands before keeps its place.
  for (const control of [...form].reverse()) {
    const value = changed(control, fields.get(control.name));
    if (value !== null) text = text.slice(0, control.start) + value + text.slice(control.end);
  }
  return { kind: 'filled', html: text };
}

interface Control {
  readonly kind: 'text' | 'choice' | 'option' | 'area' | 'button' | 'untouched';
  readonly name: string;
  /** Of a choice, an option or a button: the value that is sent where it is chosen. */
  readonly value: string;
  /** How many controls of text with this name stand before it. */
  readonly index: number;
  readonly tag: Tag;
  readonly start: number;
  readonly end: number;
}

/** The controls of each form of the content that is sent to an address by itself or by one of its buttons. */
function formsSentTo(html: string, action: string): readonly (readonly Control[])[] {
  const tags = tagsOf(html);
  const from = tags.findIndex(({ name }) => name === 'main');
  const forms: (readonly Control[])[] = [];
  for (let at = from; at !== -1 && at < tags.length; at += 1) {
    if (tags[at]?.name !== 'form') continue;
    const length = tags.slice(at).findIndex(({ name }) => name === '/form');
    const within = tags.slice(at, at + length);
    const isSentThere = within.some(
      ({ name, attributes }) => attributes.get(name === 'form' ? 'action' : 'formaction') === action,
    );
    if (isSentThere) forms.push(controlsOf(within));
    at += Math.max(length, 0);
  }
  return forms;
}

function controlsOf(tags: readonly Tag[]): readonly Control[] {
  const controls: Control[] = [];
  let select = '';
  tags.forEach((tag, position) => {
    if (tag.name === 'select') select = tag.attributes.get('name') ?? '';
    if (tag.name === '/select') select = '';
    const kind = kindOf(tag);
    const name = kind === 'option' ? select : (tag.attributes.get('name') ?? '');
    if (kind === null || name === '') return;
    const index = controls.filter((each) => each.name === name).length;
    const value = tag.attributes.get('value') ?? '';
    const end = kind === 'area' ? (tags[position + 1]?.end ?? tag.end) : tag.end;
    controls.push({ kind, name, value, index, tag, start: tag.start, end });
  });
  return controls;
}

function kindOf({ name, attributes }: Tag): Control['kind'] | null {
  switch (name) {
    case 'input': {
      const type = attributes.get('type') ?? 'text';
      if (type === 'checkbox' || type === 'radio') return 'choice';
      return type === 'password' || type === 'file' ? 'untouched' : 'text';
    }
    case 'option':
      return 'option';
    case 'textarea':
      return 'area';
    case 'button':
      return 'button';
    default:
      return null;
  }
}

/** Whether each field that was typed has a place in which it would be sent again as it is. */
function hasRoom(controls: readonly Control[], fields: FormValues): boolean {
  return [...fields].every(([name, values]) => {
    const own = controls.filter((each) => each.name === name && each.kind !== 'untouched');
    const texts = own.filter(({ kind }) => kind === 'text' || kind === 'area').length;
    const choices = own.flatMap(({ kind, value }) => (kind === 'text' || kind === 'area' ? [] : [value]));
    const typed = values.filter((value) => value !== '' && !choices.includes(value));
    return typed.length === 0 || (choices.length === 0 && values.length <= texts);
  });
}

/** A control with what was typed; null where it stays as it is. */
function changed({ kind, tag, value, index }: Control, values: readonly string[] | undefined): string | null {
  // What is not ticked is not sent.
  if (kind === 'choice') return written(tag.name, marked(tag, 'checked', values?.includes(value) === true));
  if (values === undefined) return null;
  switch (kind) {
    case 'text':
      return written(tag.name, new Map([...tag.attributes, ['value', values[index] ?? '']]));
    case 'area':
      return `${written(tag.name, tag.attributes)}\n${escaped(values[index] ?? '')}</textarea>`;
    case 'option':
      return written(tag.name, marked(tag, 'selected', values.includes(value)));
    case 'button':
    case 'untouched':
      return null;
  }
}

function marked({ attributes }: Tag, mark: string, isMarked: boolean): Tag['attributes'] {
  const others = [...attributes].filter(([name]) => name !== mark);
  return new Map(isMarked ? [...others, [mark, null]] : others);
}
