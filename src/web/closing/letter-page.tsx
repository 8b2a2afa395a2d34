import { z } from 'zod';
import { LETTER_KINDS } from '../../reports/letters/letter-model.js';
import { getLetter } from '../../usecases/letters/get-letter.js';
import { frameOf, sendPage } from '../frame.js';
import { Page } from '../page.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { LetterView } from './letter-view.js';
import { LETTER_WORDS } from './letter-words.js';

const Params = z.object({ referralId: z.uuid().toLowerCase(), letter: z.enum(LETTER_KINDS) });

/** One letter on a page of its own, to be printed. */
export function letterPage(app: WebApp, web: Web): void {
  app.get('/referrals/:referralId/letters/:letter', pageOf('page:letter'), async (request, reply) => {
    const params = Params.safeParse(request.params);
    if (!params.success) return sendRefusal(web, request, reply, { code: 'not-found', what: 'page' });
    const { referralId, letter: kind } = params.data;
    const letter = await getLetter(web.context, memberOf(request), referralId, kind);
    if (letter.kind === 'refused') return sendRefusal(web, request, reply, letter.refusal);
    return sendPage(
      reply,
      <Page frame={frameOf(request, reply)} title={LETTER_WORDS[kind]}>
        <p class="crumb not-printed">
          <a href={`/referrals/${referralId}/closing`}>Closing</a>
        </p>
        <h1 class="not-printed" safe>
          {LETTER_WORDS[kind]}
        </h1>
        <p class="not-printed">Print it with your browser: the letter alone goes on the paper.</p>
        <LetterView letter={letter.value} />
      </Page>,
    );
  });
}
