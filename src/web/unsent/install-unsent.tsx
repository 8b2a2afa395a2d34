import type { FastifyReply, FastifyRequest } from 'fastify';
import { laterBy } from '../../domain/calendar/instant.js';
import { londonTime } from '../../domain/calendar/london-time.js';
import { attributeText } from '../components/field.js';
import { Button, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { CSRF_FIELD } from '../csrf.js';
import { readForm, typedOf } from '../forms/form-values.js';
import type { Frame } from '../frame.js';
import { ownPath } from '../sign-in/sign-in-address.js';
import { pageOf, visitorOf } from '../web.js';
import type { WebApp } from '../web.js';
import { fillForm } from './fill-form.js';
import { UNSENT_KEPT_S } from './unsent-forms.js';
import type { UnsentForm, UnsentForms } from './unsent-forms.js';

const DISCARD = '/unsent-form/discard';

/**
 * Puts a form that was sent after the session had ended back into its page, for the person who sent it. Where the page has
 * no place for all of it, they may send it again as it was. It is forgotten when it is sent, thrown away, or after an hour.
 */
export function installUnsentForms(app: WebApp, unsent: UnsentForms): void {
  app.post(DISCARD, pageOf('page:unsent-form'), (request, reply) => {
    const form = readForm(request.body);
    unsent.forget(visitorOf(request).actor.accountId, typedOf(form, 'action'));
    return reply.redirect(ownPath(typedOf(form, 'page')), 303);
  });

  app.addHook('onSend', async (request, reply, payload) => {
    const { visitor, method } = request;
    if (visitor?.session.kind !== 'ready') return payload;
    const { accountId } = visitor.actor;
    if (method === 'POST' && reply.statusCode < 500) unsent.forget(accountId, pathOf(request));
    const waiting = method === 'GET' && reply.statusCode === 200 ? unsent.of(accountId) : [];
    if (waiting.length === 0 || typeof payload !== 'string' || !isHtml(reply)) return payload;
    const html = await withUnsent(request, payload, waiting);
    void reply.header('content-length', Buffer.byteLength(html));
    return html;
  });
}

/** The page with the latest form that belongs on it, and what is said of it. */
async function withUnsent(
  request: FastifyRequest,
  html: string,
  waiting: readonly UnsentForm[],
): Promise<string> {
  for (const form of waiting) {
    const filled = fillForm(html, form.action, form.fields);
    const isHere = form.page === null || form.page === pathOf(request);
    if (filled.kind === 'no-form' && !isHere) continue;
    const text = filled.kind === 'filled' ? filled.html : html;
    const isFilled = filled.kind === 'filled';
    const notice = await (
      <UnsentNotice frame={frameWithin(request, html)} form={form} isFilled={isFilled} />
    );
    return text.replace(/<main\b[\s\S]*?<\/h1>/, (head) => `${head}${notice}`);
  }
  return html;
}

/** The frame of a page that is made already: its forms have one token. */
function frameWithin(request: FastifyRequest, html: string): Frame {
  const csrfToken = new RegExp(`name="${CSRF_FIELD}" value="([^"]*)"`).exec(html)?.[1] ?? '';
  return { visitor: request.visitor, csrfToken, pageKey: request.id, path: pathOf(request) };
}

interface UnsentNoticeProps {
  readonly frame: Frame;
  readonly form: UnsentForm;
  readonly isFilled: boolean;
}

function UnsentNotice({ frame, form, isFilled }: UnsentNoticeProps): JSX.Element {
  const { action, keptAt } = form;
  const until = londonTime(laterBy(keptAt, UNSENT_KEPT_S));
  return (
    <Notice
      kind="warning"
      title={
        isFilled ? 'What you typed is in the form again, and is not stored' : 'What you sent is not stored'
      }
      isLive
    >
      <p safe>
        {`Your session had ended when you sent it, ${londonTime(keptAt)}. ${
          isFilled
            ? 'Look at it and send it once more.'
            : 'This page has no place for all of it, but it can be sent once more as it was.'
        } It waits for you alone, until ${until}.`}
      </p>
      {isFilled ? '' : <SendAgain frame={frame} form={form} />}
      <Form frame={frame} action={DISCARD} label="Throw away what was typed">
        <input type="hidden" name="action" value={attributeText(action)} />
        <input type="hidden" name="page" value={attributeText(frame.path)} />
        <Button>Throw it away</Button>
      </Form>
    </Notice>
  );
}

function SendAgain({ frame, form }: Pick<UnsentNoticeProps, 'frame' | 'form'>): JSX.Element {
  const fields = [...form.fields].flatMap(([name, values]) => values.map((value) => [name, value] as const));
  return (
    <Form frame={frame} action={attributeText(form.action)} label="Send what was typed">
      {fields.map(([name, value]) => (
        <input type="hidden" name={attributeText(name)} value={attributeText(value)} />
      ))}
      <Button kind="primary">Send it once more</Button>
    </Form>
  );
}

function isHtml(reply: FastifyReply): boolean {
  return String(reply.getHeader('content-type')).startsWith('text/html');
}

function pathOf({ url }: FastifyRequest): string {
  return url.replace(/\?.*$/s, '');
}
