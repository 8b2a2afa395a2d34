import { expect, it } from 'vitest';
import { fillForm } from '../../../src/web/unsent/fill-form.js';
import { addressOf, EVERY_PAGE, startFilled } from '../../support/every-page.js';
import { fieldsOfForm, formsOf } from '../../support/form-fields.js';
import type { FormFields } from '../../support/form-fields.js';
import { pagesAs } from '../../support/page-client.js';
import type { TestRole } from '../../support/start-app.js';

const ROLES = ['admin', 'clinician', 'lead', 'commissioner'] as const satisfies readonly TestRole[];

it('fills every form of every page as a browser would send it, whatever was typed', async () => {
  const filled = await startFilled();
  let forms = 0;
  for (const role of ROLES) {
    const pages = await pagesAs(filled.service, role);
    for (const entry of EVERY_PAGE.filter((each) => each.role === role && each.status === undefined)) {
      const address = addressOf(entry, filled);
      const { text } = await pages.get(address);
      for (const form of formsOf(text).filter((each) => !/type="(?:password|file)"/.test(each))) {
        forms += 1;
        const sent = typedInto(form);
        const action = /action="([^"]*)"/.exec(form)?.[1] ?? '';
        const result = fillForm(text, action, valuesOf(sent));
        expect(result.kind, `${address} ${action}`).toBe('filled');
        const after = result.kind === 'filled' ? formsOf(result.html).map(fieldsOfForm) : [];
        expect(after, `${address} ${action}`).toContainEqual(sent);
      }
    }
  }
  expect(forms).toBeGreaterThan(30);
  await filled.service.close();
}, 60_000);

/** What a browser would send of a form with every text lengthened, every box turned over and another choice made. */
function typedInto(form: string): FormFields {
  const other = form
    .replaceAll(/<input\b(?:[^">]|"[^"]*")*>/g, (input) => {
      if (/name="_(?:csrf|key)"/.test(input)) return input;
      if (/type="checkbox"/.test(input)) {
        return / checked/.test(input)
          ? input.replace(' checked', '')
          : input.replace('<input', '<input checked');
      }
      if (/type="radio"/.test(input))
        return input.replace(' checked', '').replace('<input', '<input checked');
      return / value="/.test(input)
        ? input.replace(' value="', ' value="&lt;b>&amp;&#34;$1 ')
        : input.replace('<input', '<input value="typed"');
    })
    .replaceAll(/(<textarea\b(?:[^">]|"[^"]*")*>)\n?/g, '$1\n&lt;/textarea> typed\n')
    .replaceAll(/ selected(?=[ >])/g, '')
    .replaceAll(/<option\b((?:[^">]|"[^"]*")*>(?:(?!<option)[\s\S])*<\/select>)/g, '<option selected $1');
  const fields = fieldsOfForm(other);
  // Of radio buttons a browser sends one.
  const radios = [...form.matchAll(/type="radio"[^>]* name="([^"]*)"/g)].map(([, name = '']) => name);
  for (const name of radios) fields[name] = [fields[name] ?? ''].flat().at(-1) ?? '';
  return fields;
}

function valuesOf(fields: FormFields): ReadonlyMap<string, readonly string[]> {
  const typed = Object.entries(fields).filter(([name]) => name !== '_csrf' && name !== '_key');
  return new Map(typed.map(([name, value]) => [name, [value].flat()]));
}
