import supertest from 'supertest';
import { CSRF_FIELD } from '../../src/web/csrf.js';
import { SESSION_COOKIE } from '../../src/web/session-cookie.js';
import { sessionSecretFor } from './signed-in.js';
import type { TestApp, TestRole } from './start-app.js';

type Fields = Readonly<Record<string, string | readonly string[]>>;

/** A browser without a window: it keeps cookies, and sends forms with the token of the page they stand on. */
export interface PageClient {
  readonly get: (path: string) => Promise<supertest.Response>;
  /**
   * Opens a page and sends a form of it by POST: the hidden fields that stand there, with what is given.
   *
   * @param page address of the page that the form stands on
   * @param action where the form is sent; the page itself unless said otherwise
   */
  readonly submit: (page: string, fields: Fields, action?: string) => Promise<supertest.Response>;
  /** Opens a page and sends its form with a file. */
  readonly upload: (
    page: string,
    file: { readonly name: string; readonly content: string },
  ) => Promise<supertest.Response>;
  /** Sends a form as it is, without any page. */
  readonly post: (path: string, fields: Fields) => Promise<supertest.Response>;
  readonly cookies: Map<string, string>;
}

/** Pages as a role sees them; without a session where it is null. */
export async function pagesAs(service: TestApp, role: TestRole | null): Promise<PageClient> {
  const cookies = new Map<string, string>();
  if (role !== null) cookies.set(SESSION_COOKIE, await sessionSecretFor(service, role));
  return clientWith(service, cookies);
}

/** Pages with a session secret in the cookie. */
export function pagesWith(service: TestApp, sessionSecret: string): PageClient {
  return clientWith(service, new Map([[SESSION_COOKIE, sessionSecret]]));
}

function clientWith(service: TestApp, cookies: Map<string, string>): PageClient {
  const send = async (test: supertest.Test): Promise<supertest.Response> => {
    const header = [...cookies].map(([name, value]) => `${name}=${value}`).join('; ');
    const response = await test.set('accept', 'text/html').set('cookie', header);
    for (const line of setCookiesOf(response)) {
      const [, name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(line) ?? [];
      if (value === '') cookies.delete(name);
      else cookies.set(name, value);
    }
    return response;
  };
  const get = (path: string) => send(supertest(service.app.server).get(path));
  const post = (path: string, fields: Fields) =>
    send(supertest(service.app.server).post(path).type('form').send(encoded(fields)));
  const submit = async (page: string, fields: Fields, action = page.replace(/\?.*$/, '')) => {
    const { text } = await get(page);
    return post(action, { ...hiddenFieldsOf(text, action), ...fields });
  };
  const upload: PageClient['upload'] = async (page, { name, content }) => {
    const { text } = await get(page);
    const sent = supertest(service.app.server).post(page).attach('file', Buffer.from(content), name);
    return send(
      Object.entries(hiddenFieldsOf(text, page)).reduce((form, field) => form.field(...field), sent),
    );
  };
  return { get, post, submit, upload, cookies };
}

/** What a response asks the browser to keep. */
export function setCookiesOf(response: supertest.Response): readonly string[] {
  const header: unknown = response.headers['set-cookie'];
  return Array.isArray(header) ? header.map(String) : [];
}

/** The hidden fields of the form that is sent to an address; at least its token. */
function hiddenFieldsOf(html: string, action: string): Record<string, string> {
  const forms = [...html.matchAll(/<form\b[^>]*>[\s\S]*?<\/form>/g)].map(([form]) => form);
  const form = forms.find((text) => text.includes(`action="${action}"`)) ?? forms[0] ?? '';
  const fields: Record<string, string> = {};
  for (const [input] of form.matchAll(/<input type="hidden"[^>]*>/g)) {
    const name = /name="([^"]*)"/.exec(input)?.[1] ?? '';
    fields[name] = unescaped(/value="([^"]*)"/.exec(input)?.[1] ?? '');
  }
  if (fields[CSRF_FIELD] === undefined) throw new Error(`No form is sent to ${action} here.`);
  return fields;
}

function unescaped(text: string): string {
  return text
    .replaceAll('&#34;', '"')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');
}

function encoded(fields: Fields): string {
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries(fields)) {
    for (const one of typeof value === 'string' ? [value] : value) query.append(name, one);
  }
  return query.toString();
}
