import { describe, expect, it } from 'vitest';
import { RadioGroup, Select } from '../../src/web/components/choices.js';
import { DateField } from '../../src/web/components/date-field.js';
import { ErrorSummary } from '../../src/web/components/form.js';
import { Notice } from '../../src/web/components/notice.js';
import { Pager, Tag } from '../../src/web/components/parts.js';
import { Table, Text } from '../../src/web/components/table.js';
import { NumberField, TextArea, TextField } from '../../src/web/components/text-fields.js';

/** Components without anything to wait for give their text at once. */
function markupOf(html: JSX.Element): string {
  if (typeof html !== 'string') throw new Error('The component waits for something.');
  return html;
}

/** Would run, or break out of where it stands, if it were not escaped. */
const HOSTILE = `"><script>alert(1)</script>' onfocus='x &amp; y`;

describe('every component writes what it is given as text', () => {
  it.each([
    ['a text field', TextField({ name: 'a', label: HOSTILE, hint: HOSTILE, error: HOSTILE, value: HOSTILE })],
    ['a number', NumberField({ name: 'a', label: HOSTILE, value: HOSTILE, unit: HOSTILE })],
    ['a text area', TextArea({ name: 'a', label: HOSTILE, value: HOSTILE })],
    [
      'a date',
      DateField({ name: 'a', label: HOSTILE, value: { day: HOSTILE, month: HOSTILE, year: HOSTILE } }),
    ],
    [
      'a selection',
      Select({
        name: 'a',
        label: 'x',
        choices: [{ value: HOSTILE, label: HOSTILE }],
        value: HOSTILE,
        none: HOSTILE,
      }),
    ],
    [
      'a choice',
      RadioGroup({
        name: 'a',
        label: HOSTILE,
        choices: [{ value: HOSTILE, label: HOSTILE, hint: HOSTILE }],
        value: null,
      }),
    ],
    ['the summary of errors', ErrorSummary({ errors: [{ field: HOSTILE, message: HOSTILE }] })],
    ['a notice', Notice({ kind: 'plain', title: HOSTILE, children: Text({ value: HOSTILE }) })],
    ['a tag', Tag({ label: HOSTILE })],
    ['a pager', Pager({ first: null, next: `/x?after=${HOSTILE}`, what: HOSTILE })],
    [
      'a table',
      Table({ caption: HOSTILE, columns: [{ head: HOSTILE }], rows: [[Text({ value: HOSTILE })]] }),
    ],
  ])('%s', (_name, html) => {
    // Inside quotes everything but a quote is text.
    const outsideQuotes = markupOf(html).replace(/="[^"]*"/g, '');
    expect(outsideQuotes).not.toMatch(/<script|onfocus='/);
    expect(markupOf(html)).not.toContain(`"><script`);
  });
});

describe('a table', () => {
  const rows = [[Text({ value: 'CAT' }), Text({ value: '18' })]];
  const columns = [{ head: 'Measure' }, { head: 'Baseline', isNumber: true }];

  it('that is stacked on a phone names the column at each entry', () => {
    const html = markupOf(Table({ caption: 'Scores', columns, rows, isStacked: true }));
    expect(html).toContain('<table class="stacked">');
    expect(html).toContain('<td class="number" data-head="Baseline">');
    expect(html).toContain('<th scope="row">');
  });

  it('that moves sideways says each head once', () => {
    expect(markupOf(Table({ caption: 'Scores', columns, rows })).split('Baseline')).toHaveLength(2);
  });
});

describe('a field', () => {
  it('is tied to its label, hint and error', () => {
    const html = markupOf(
      NumberField({
        name: 'plannedWeeks',
        label: 'Planned weeks',
        hint: 'From 1 to 52',
        error: 'Give a number.',
        value: '0',
      }),
    );
    expect(html).toContain('<label for="field-plannedWeeks">Planned weeks</label>');
    expect(html).toContain('id="field-plannedWeeks"');
    expect(html).toContain('aria-describedby="field-plannedWeeks-hint field-plannedWeeks-error"');
    expect(html).toContain('aria-invalid="true"');
    expect(html).toContain('inputmode="numeric"');
    expect(html).toContain('value="0"');
  });

  it('keeps an ampersand and a quote as they were typed', () => {
    const html = markupOf(TextField({ name: 'a', label: 'A', value: 'salt &amp; "sand"' }));
    expect(html).toContain('value="salt &amp;amp; &#34;sand&#34;"');
  });

  it('keeps a line break at the very beginning of a text', () => {
    // HTML drops the first line break of a text area.
    expect(markupOf(TextArea({ name: 'a', label: 'A', value: '\nsand' }))).toContain('>\n\nsand</textarea>');
  });
});

describe('the summary of errors', () => {
  it('leads to each field and stands where nothing is wrong as nothing', () => {
    const html = markupOf(
      ErrorSummary({ errors: [{ field: 'targets.x', message: 'A target is 0 to 100 %.' }] }),
    );
    expect(html).toContain('role="alert"');
    expect(html).toContain('<a href="#field-targets_x">A target is 0 to 100 %.</a>');
    expect(ErrorSummary({ errors: [] })).toBe('');
  });
});

it('a notice says its kind in a word and a shape', () => {
  const kinds = (['plain', 'done', 'check', 'warning'] as const).map((kind) =>
    markupOf(Notice({ kind, children: '' })),
  );
  expect(new Set(kinds.map((html) => />([A-Z][a-z ]+)<\/p>/.exec(html)?.[1])).size).toBe(4);
  expect(new Set(kinds.map((html) => /<path d="([^"]+)"/.exec(html)?.[1])).size).toBe(4);
});
