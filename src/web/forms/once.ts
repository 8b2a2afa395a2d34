import type { FastifyRequest } from 'fastify';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Context, TeamMember } from '../../usecases/context.js';
import {
  formerAnswer,
  giveKeyBack,
  keepAnswerOf,
  requestKeyOf,
} from '../../usecases/requests/answer-once.js';
import { turnsByName } from '../../usecases/requests/turns.js';
import { CSRF_FIELD } from '../csrf.js';
import { memberOf } from '../web.js';
import { readForm, textOf } from './form-values.js';

/** Name of the hidden field that holds the key of a form: sent twice, the form is carried out once. */
export const KEY_FIELD = 'once';

/** What a form made: the address of the page that shows it. */
export type Made = Outcome<string>;

const KEY = /^[\x21-\x7e]{1,200}$/;
const nextTurn = turnsByName();

/**
 * Carries a form out once, however often it is sent.
 *
 * A form that was refused may be sent again under its key. One that was carried out leads again to what it made; with
 * other values in it, it is refused as `key-used-otherwise`.
 *
 * @param act carries the form out, as the member whom it is given
 * @returns the address to go to
 */
export async function carryOutOnce(
  context: Context,
  request: FastifyRequest,
  act: (actor: TeamMember) => Promise<Made>,
): Promise<Made> {
  const actor = memberOf(request);
  const form = readForm(request.body);
  const key = textOf(form, KEY_FIELD);
  if (!KEY.test(key)) return act(actor);
  const body = [...form].filter(([name]) => name !== CSRF_FIELD);
  const { id: requestId, method, url: path } = request;
  const requestKey = requestKeyOf(actor, { key, requestId, method, path, body });
  const pass = await nextTurn(`${actor.accountId} ${key}`);
  try {
    const former = await formerAnswer(context, actor, requestKey);
    if (former.kind === 'refused') return former;
    if (former.value !== null) return addressOf(former.value.location);
    const made = await act({ ...actor, requestKey });
    if (made.kind === 'refused') await giveKeyBack(context, actor, requestKey);
    else {
      const answer = { status: 303, contentType: null, location: made.value, etag: null, body: null };
      await keepAnswerOf(context, actor, requestKey, answer);
    }
    return made;
  } finally {
    pass();
  }
}

function addressOf(location: string | null): Made {
  return location === null ? refused({ code: 'answer-not-kept', existingId: null }) : done(location);
}
