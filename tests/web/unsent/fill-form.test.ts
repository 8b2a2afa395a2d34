import { describe, expect, it } from 'vitest';
import { fillForm } from '../../../src/web/unsent/fill-form.js';
import { fieldsOfForm, formsOf } from '../../support/form-fields.js';

const page = (form: string) => `<html><body><main id="content"><h1>Dunes</h1>${form}</main></body></html>`;
const form = (content: string, attributes = '') =>
  `<form method="post" action="/dunes"${attributes}><input type="hidden" name="_csrf" value="token"/>${content}</form>`;

function filled(content: string, fields: Record<string, readonly string[]>, action = '/dunes') {
  const result = fillForm(page(form(content)), action, new Map(Object.entries(fields)));
  if (result.kind !== 'filled') return result.kind;
  const [found = ''] = formsOf(result.html);
  return fieldsOfForm(found);
}

describe('filling a form of a page', () => {
  it('puts every kind of field back as it was typed, and leaves the token of the page', () => {
    const content = [
      '<input name="name" value="Old" aria-label="a > b"/>',
      '<input type="hidden" name="version" value="3"/>',
      '<textarea name="notes">\nold</textarea>',
      '<select name="site"><option value="">None</option><option value="a" selected>A</option><option value="b">B</option></select>',
      '<input type="radio" name="side" value="left" checked/><input type="radio" name="side" value="right"/>',
      '<input type="checkbox" name="days" value="mon" checked/><input type="checkbox" name="days" value="tue"/>',
      '<input type="checkbox" name="sure" value="yes" checked/>',
    ].join('');
    const fields = {
      name: ['<b>"Sand" & \'shore\'</b> $& &amp;'],
      version: ['2'],
      notes: ['one\r\n</textarea><script>'],
      site: ['b'],
      side: ['right'],
      days: ['tue'],
    };
    expect(filled(content, fields)).toEqual({
      _csrf: 'token',
      name: fields.name[0],
      version: '2',
      notes: fields.notes[0],
      site: 'b',
      side: 'right',
      days: 'tue',
    });
  });

  it('finds the form by the address of one of its buttons, and of several forms the one with a place for all', () => {
    const button = '<input name="name"/><button type="submit" formaction="/dunes/check">Check</button>';
    expect(filled(button, { name: ['Sand'] }, '/dunes/check')).toMatchObject({ name: 'Sand' });
    const two = `${form('<input name="other"/>')}${form('<input name="name"/>')}`;
    const result = fillForm(page(two), '/dunes', new Map([['name', ['Sand']]]));
    const forms = formsOf(result.kind === 'filled' ? result.html : '').map((each) => fieldsOfForm(each));
    expect(forms).toEqual([
      { _csrf: 'token', other: '' },
      { _csrf: 'token', name: 'Sand' },
    ]);
  });

  it.each([
    ['a field that is not there', '<input name="name"/>', { other: ['1'] }],
    ['a choice that is not offered', '<input type="radio" name="side" value="left"/>', { side: ['right'] }],
    ['more lines than there are', '<input name="name"/>', { name: ['1', '2'] }],
    ['a passphrase', '<input type="password" name="word"/>', { word: ['sesame'] }],
    [
      'a field of a text that only looks like one',
      '<input title="<input name=&#34;x&#34;/>" name="y"/>',
      { x: ['1'] },
    ],
  ])('fills nothing where the page has no place for %s', (_name, content, fields) => {
    expect(filled(content, fields)).toBe('no-room');
  });

  it('says where a page has no such form; one outside of its content is none', () => {
    expect(filled('<input name="name"/>', { name: ['Sand'] }, '/shore')).toBe('no-form');
    const outside = `<html><body>${form('<input name="name"/>')}<main></main></body></html>`;
    expect(fillForm(outside, '/dunes', new Map([['name', ['Sand']]])).kind).toBe('no-form');
  });
});
