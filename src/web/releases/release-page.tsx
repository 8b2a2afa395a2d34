import type { FastifyReply, FastifyRequest } from 'fastify';
import type { ReleaseForm } from '../../domain/release/kept-release.js';
import { releaseDocument } from '../../reports/release/release-document.js';
import { readRelease, readReleaseFile, withdraw } from '../../usecases/releases/read-releases.js';
import type { ReadRelease } from '../../usecases/releases/read-releases.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { TextField } from '../components/text-fields.js';
import { errorAt, NO_ERRORS } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { readForm, textOf } from '../forms/form-values.js';
import { reasonFault } from '../forms/line.js';
import { frameOf, sendPage } from '../frame.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf, visitorOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { DocumentView } from '../report/document-view.js';

const FILES: Readonly<Record<string, { readonly form: ReleaseForm; readonly words: string }>> = {
  'summary.pdf': { form: 'pdf', words: 'To read and print (PDF)' },
  'summary.csv': { form: 'csv', words: 'Rows (CSV)' },
  'summary.xlsx': { form: 'xlsx', words: 'Spreadsheet (XLSX)' },
  'summary.fhir.json': { form: 'fhir', words: 'FHIR measure reports (JSON)' },
};

/** One release as a layperson reads it, its files, and for the lead its withdrawal. */
export function releasePage(app: WebApp, web: Web): void {
  const { context } = web;
  const show = async (request: FastifyRequest, reply: FastifyReply, errors: FormErrors, status = 200) => {
    const { actor } = visitorOf(request);
    const outcome = await readRelease(context, actor, numberIn(request));
    if (outcome.kind === 'refused') return sendRefusal(web, request, reply, outcome.refusal);
    const view = {
      frame: frameOf(request, reply),
      read: outcome.value,
      isLead: actor.role === 'lead',
      errors,
    };
    return sendPage(reply, <ReleaseView {...view} />, status);
  };

  app.get('/releases/:number', pageOf('page:release'), (request, reply) => show(request, reply, NO_ERRORS));

  app.get('/releases/:number/summary.json', pageOf('page:release'), async (request, reply) => {
    const outcome = await readRelease(context, visitorOf(request).actor, numberIn(request), 'json');
    if (outcome.kind === 'refused') return sendRefusal(web, request, reply, outcome.refusal);
    return reply.type('application/json').send(Buffer.from(outcome.value.text));
  });

  for (const [name, { form }] of Object.entries(FILES)) {
    app.get(`/releases/:number/${name}`, pageOf('page:release'), async (request, reply) => {
      const number = numberIn(request);
      const outcome = await readReleaseFile(context, visitorOf(request).actor, number, form);
      if (outcome.kind === 'refused') return sendRefusal(web, request, reply, outcome.refusal);
      const { content, mediaType } = outcome.value;
      const fileName = `release-${number}.${name.slice('summary.'.length)}`;
      return reply
        .type(mediaType)
        .header('content-disposition', `attachment; filename="${fileName}"`)
        .send(content);
    });
  }

  app.post('/releases/:number/withdrawal', pageOf('page:release-withdrawal'), async (request, reply) => {
    const reason = textOf(readForm(request.body), 'reason');
    const fault = reasonFault('reason', reason);
    if (fault !== null) return show(request, reply, [fault], 422);
    const outcome = await withdraw(context, memberOf(request), numberIn(request), reason);
    if (outcome.kind === 'refused') return sendRefusal(web, request, reply, outcome.refusal);
    return reply.redirect(`/releases/${outcome.value.number}`, 303);
  });
}

/** The number in the address; 0, which no release has, where it is none. */
function numberIn(request: FastifyRequest): number {
  const { number = '' } = request.params as { readonly number?: string };
  return /^[1-9]\d{0,8}$/.test(number) ? Number(number) : 0;
}

interface ReleaseProps {
  readonly frame: Frame;
  readonly read: ReadRelease;
  readonly isLead: boolean;
  readonly errors: FormErrors;
}

function ReleaseView({ frame, read, isLead, errors }: ReleaseProps): JSX.Element {
  const { entry, release, forms } = read;
  const document = releaseDocument(release);
  const { number } = entry;
  return (
    <Page
      styles={['report.css']}
      frame={frame}
      title={`${errors.length > 0 ? 'Error: ' : ''}Release ${number}`}
      sheetLine={document.footer}
    >
      <p class="not-printed">
        <a href="/releases">All releases</a>
      </p>
      <article class="report leaflet">
        <h1 safe>{document.title}</h1>
        <ErrorSummary errors={errors} />
        <Standing read={read} />
        {document.subtitle.map((line) => (
          <p class="muted" safe>
            {line}
          </p>
        ))}
        <DocumentView document={document} addressOf={() => '#in-short'} />
      </article>
      <section id="files" class="not-printed">
        <h2>Files of this release</h2>
        <ul>
          <li>
            <a href={`/releases/${number}/summary.json`}>Canonical text (JSON)</a>
          </li>
          {Object.entries(FILES)
            .filter(([, { form }]) => forms.includes(form))
            .map(([name, { words }]) => (
              <li>
                <a href={`/releases/${number}/${name}`} safe>
                  {words}
                </a>
              </li>
            ))}
        </ul>
        <p class="muted">
          SHA-256 of the canonical text:{' '}
          <span class="code" safe>
            {entry.digest}
          </span>
        </p>
      </section>
      {isLead && entry.withdrawn === null ? <Withdrawal frame={frame} number={number} errors={errors} /> : ''}
    </Page>
  );
}

function Standing({ read }: { readonly read: ReadRelease }): JSX.Element {
  const { withdrawn, correctedBy } = read.entry;
  return (
    <>
      {withdrawn === null ? (
        ''
      ) : (
        <Notice kind="warning" title="This release was withdrawn">
          <p safe>{`It no longer stands. Reason: ${withdrawn.reason}`}</p>
        </Notice>
      )}
      {correctedBy === null ? (
        ''
      ) : (
        <Notice kind="check" title="This release was corrected">
          <p>
            <a href={`/releases/${correctedBy}`} safe>
              {`Release ${correctedBy}`}
            </a>{' '}
            stands in its place.
          </p>
        </Notice>
      )}
    </>
  );
}

function Withdrawal({
  frame,
  number,
  errors,
}: {
  readonly frame: Frame;
  readonly number: number;
  readonly errors: FormErrors;
}): JSX.Element {
  return (
    <section class="not-printed">
      <h2>Withdraw this release</h2>
      <p>It stays readable and says that it no longer stands. This cannot be taken back.</p>
      <Form frame={frame} action={`/releases/${number}/withdrawal`} label="Withdraw this release">
        <TextField
          name="reason"
          label="Reason"
          hint="The commissioner reads it."
          width="long"
          autocomplete="off"
          error={errorAt(errors, 'reason')}
        />
        <div class="actions">
          <Button>Withdraw</Button>
        </div>
      </Form>
    </section>
  );
}
