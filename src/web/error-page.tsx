import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import { notWritable } from '../usecases/not-writable.js';
import type { NotWritable } from '../usecases/not-writable.js';
import { frameOf, sendPage } from './frame.js';
import { Page } from './page.js';
import type { RefusalWords, Web, WebApp } from './web.js';

/** Answers every error of a page, and every address that is not there, by a page in the frame. */
export function installErrorPages(app: WebApp, web: Web): void {
  app.setNotFoundHandler((request, reply) =>
    wantsPage(request) ? sendErrorPage(request, reply, NOT_FOUND) : web.answerNotFound(request, reply),
  );
  app.setErrorHandler((error: FastifyError, request, reply) => {
    if (request.is404 && !wantsPage(request)) return web.answerNotFound(request, reply);
    const words = wordsForError(error);
    if (words.status >= 500) {
      request.log.error({ err: { name: error.name, code: error.code, stack: error.stack } }, 'page failed');
    }
    return sendErrorPage(request, reply, words);
  });
}

/**
 * Sends an error page.
 *
 * It is also sent where the record cannot be read: then the frame is that of somebody who is not signed in.
 */
export function sendErrorPage(
  request: FastifyRequest,
  reply: FastifyReply,
  { status, title, detail }: RefusalWords,
): FastifyReply {
  const frame = frameOf(request, reply);
  const page = (
    <Page frame={frame} title={title}>
      <h1 safe>{title}</h1>
      <p class="lead" safe>
        {detail}
      </p>
      <p>
        <a href="/">{frame.visitor === null ? 'Go to the sign-in page' : 'Go to your start page'}</a>
      </p>
      {status === 500 ? (
        <p class="muted">
          Reference for whoever runs the service:{' '}
          <span class="code" safe>
            {request.id}
          </span>
        </p>
      ) : (
        ''
      )}
    </Page>
  );
  return sendPage(reply, page, status);
}

/** A browser that shows an address to a person, and not a program that reads the API. */
function wantsPage(request: FastifyRequest): boolean {
  return !/^\/api(?:\/|\?|$)/.test(request.url) && (request.headers.accept ?? '').includes('text/html');
}

const NOT_FOUND: RefusalWords = {
  status: 404,
  title: 'There is no such page',
  detail: 'The address may be mistyped, or what it showed may belong to another team.',
};

function wordsForError(error: FastifyError): RefusalWords {
  const known = KNOWN[error.code];
  if (known !== undefined) return known;
  const reason = notWritable(error);
  if (reason !== null) return NOT_WRITABLE[reason];
  const status = error.statusCode ?? 500;
  if (status >= 400 && status < 500) {
    return {
      status: 400,
      title: 'This could not be read',
      detail: 'Nothing was stored. Please go back and try again.',
    };
  }
  return {
    status: 500,
    title: 'Something went wrong',
    detail:
      'The service failed and nothing was stored. Please try again; if it happens again, tell whoever runs the service.',
  };
}

const NOT_WRITABLE: Readonly<Record<NotWritable, RefusalWords>> = {
  full: {
    status: 507,
    title: 'The record cannot be written',
    detail:
      'Nothing was stored: the disk of the record is full. What is held can be read. Tell whoever runs the service.',
  },
  'not-writable': {
    status: 503,
    title: 'The record cannot be written',
    detail:
      'Nothing was stored: the record takes no writes at this moment. Please try again; if it happens again, tell whoever runs the service.',
  },
};

const STALE_FORM: RefusalWords = {
  status: 403,
  title: 'This form can no longer be used',
  detail:
    'Nothing was stored. The form was not opened in this browser, or it was opened long ago, or the browser keeps no cookies of this address. Open the page again and send it once more.',
};

const KNOWN: Readonly<Record<string, RefusalWords>> = {
  FST_CSRF_MISSING_SECRET: STALE_FORM,
  FST_CSRF_INVALID_TOKEN: STALE_FORM,
  FST_ERR_CTP_BODY_TOO_LARGE: {
    status: 413,
    title: 'That is too much at once',
    detail: 'Nothing was stored. A form may hold up to 256 KiB.',
  },
  FST_ERR_CTP_INVALID_MEDIA_TYPE: {
    status: 415,
    title: 'This could not be read',
    detail: 'Nothing was stored. Pages take forms; programs use the API under /api/v1.',
  },
};
