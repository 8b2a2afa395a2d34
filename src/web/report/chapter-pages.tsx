import type { FastifyReply, FastifyRequest } from 'fastify';
import { periodWords } from '../../domain/calendar/period-words.js';
import type { Document, Part, Section } from '../../documents/document-model.js';
import { quarterlyDocument } from '../../reports/quarterly/document/build-document.js';
import { readQuarter } from '../../usecases/reports/report-quarter.js';
import { reportRequest } from '../../usecases/reports/report-request.js';
import type { AskedReport } from '../../usecases/reports/report-request.js';
import { attributeText } from '../components/field.js';
import { frameOf, sendPage } from '../frame.js';
import { Page } from '../page.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { addressesOf, partAddress, partsOf, partsRead, sectionAddress } from './chapters.js';
import { Blocks } from './document-view.js';
import { faultsAddress, readReportAddress, reportQuery } from './report-address.js';

interface Asked {
  readonly chapterId: string;
  readonly partId: string | null;
}

/** What a chapter or a part may be called: it is told to the trail before it is looked for. */
const NAME = /^[a-z][a-z0-9.-]{0,99}$/;

/** Sections of the report, and parts of sections, that have a page of their own. */
export function chapterPages(app: WebApp, web: Web): void {
  const { context } = web;
  app.get<{ Params: { chapterId: string } }>(
    '/report/chapters/:chapterId',
    pageOf('page:report-chapter'),
    (request, reply) => sendChapter(request, reply, { ...request.params, partId: null }),
  );
  app.get<{ Params: { chapterId: string; partId: string } }>(
    '/report/chapters/:chapterId/:partId',
    pageOf('page:report-chapter'),
    (request, reply) => sendChapter(request, reply, request.params),
  );

  async function sendChapter(
    request: FastifyRequest,
    reply: FastifyReply,
    { chapterId, partId }: Asked,
  ): Promise<FastifyReply> {
    if (![chapterId, partId ?? chapterId].every((id) => NAME.test(id))) return notFound(reply);
    const today = context.clock.today();
    const { asked, faults } = readReportAddress(request.query, today);
    if (faults.length > 0) return reply.redirect(faultsAddress(request.url), 303);
    const read = reportRequest({ ...asked, include: partsRead(chapterId) }, today);
    if (read.kind === 'refused') return sendRefusal(web, request, reply, read.refusal);
    const shown = { chapter: chapterId, ...(partId === null ? {} : { part: partId }) };
    const document = quarterlyDocument(await readQuarter(context, memberOf(request), read.value, shown));
    const section = document.sections.find(({ id }) => id === chapterId);
    if (section === undefined) return notFound(reply);
    const part = partId === null ? null : partsOf(section).find(({ id }) => id === partId);
    if (part === undefined) return notFound(reply);
    const { title } = part ?? section;
    return sendPage(
      reply,
      <Page
        styles={['report.css']}
        frame={frameOf(request, reply)}
        title={`${title} - Report ${periodWords(read.value.period)}`}
        sheetLine={document.footer}
      >
        <article class="report">
          <Crumb
            label={periodWords(read.value.period)}
            asked={asked}
            section={part === null ? null : section}
          />
          <h1 safe>{title}</h1>
          <Covers document={document} />
          <Blocks blocks={(part ?? section).blocks} addresses={addressesOf(section.id, asked)} />
          {part === null ? '' : <Neighbours section={section} part={part} asked={asked} />}
        </article>
      </Page>,
    );
  }
}

function notFound(reply: FastifyReply): FastifyReply {
  reply.callNotFound();
  return reply;
}

interface CrumbProps {
  readonly label: string;
  readonly asked: AskedReport;
  /** The section that a part is of. */
  readonly section: Section | null;
}

function Crumb({ label, asked, section }: CrumbProps): JSX.Element {
  return (
    <p class="crumb not-printed">
      <a href={attributeText(`/report?${reportQuery(asked)}`)} safe>
        {`Report ${label}`}
      </a>
      {section === null ? (
        ''
      ) : (
        <>
          {' / '}
          <a href={attributeText(sectionAddress(section.id, asked))} safe>
            {section.title}
          </a>
        </>
      )}
    </p>
  );
}

/** Whose report it is, the period, the data cut and what it is narrowed to. */
function Covers({ document: { title, subtitle } }: { readonly document: Document }): JSX.Element {
  return (
    <p class="muted" safe>
      {`${title}. ${subtitle.join(' ')}`}
    </p>
  );
}

interface NeighboursProps {
  readonly section: Section;
  readonly part: Part;
  readonly asked: AskedReport;
}

/** The parts before and after, so that all can be read one after another. */
function Neighbours({ section, part, asked }: NeighboursProps): JSX.Element {
  const parts = partsOf(section);
  const at = parts.indexOf(part);
  const [before, after] = [parts[at - 1], parts[at + 1]];
  const link = (to: Part | undefined, words: string): JSX.Element =>
    to === undefined ? (
      ''
    ) : (
      <a href={attributeText(partAddress(section.id, to.id, asked))} safe>
        {`${words}: ${to.title}`}
      </a>
    );
  return (
    <nav class="pager" aria-label={attributeText(section.title)}>
      {link(before, 'Before')}
      {link(after, 'Next')}
    </nav>
  );
}
