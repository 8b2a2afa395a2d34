import { z } from 'zod';
import { addDays, weekdayOf } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { parsePlainDate } from '../../domain/calendar/plain-date.js';
import { SESSION_MODES } from '../../domain/referral/closed-sets.js';
import { holdSession, listSessions } from '../../usecases/sessions/keep-register.js';
import { sitesOfTeam } from '../../usecases/providers.js';
import { typedDate, typedDateOf } from '../forms/date-entry.js';
import { entryReader } from '../forms/entry-reader.js';
import { errorsOf, NO_ERRORS } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { readForm, textOf } from '../forms/form-values.js';
import { refusalErrors } from '../forms/refusal-errors.js';
import { frameOf, sendPage } from '../frame.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { ClassesView } from './classes-view.js';
import { NewClassView } from './new-class-view.js';

/** Classes of one week at all sites: a team holds far fewer. */
const MOST_OF_A_WEEK = 200;

const Query = z.object({
  week: z
    .string()
    .nullable()
    .default(null)
    .transform((text) => (text === null ? null : parsePlainDate(text)))
    .catch(null),
  site: z.uuid().toLowerCase().nullable().catch(null).default(null),
});

/** The classes of a week, and a form for a new one. */
export function classesPages(app: WebApp, web: Web): void {
  const { context } = web;

  app.get('/classes', pageOf('page:classes'), async (request, reply) => {
    const actor = memberOf(request);
    const query = Query.parse(request.query ?? {});
    const today = context.clock.today();
    const monday = mondayOf(query.week ?? today);
    const filter = { siteId: query.site, from: monday, to: addDays(monday, 6) };
    const { rows } = await listSessions(context, actor, filter, { limit: MOST_OF_A_WEEK, after: null });
    const sites = await sitesOfTeam(context, actor);
    const view = { today, monday, siteId: query.site, sites, sessions: rows };
    return sendPage(reply, <ClassesView frame={frameOf(request, reply)} {...view} />);
  });

  app.get('/classes/new', pageOf('page:new-class'), async (request, reply) => {
    const sites = await sitesOfTeam(context, memberOf(request));
    const typed = {
      siteId: sites.length === 1 ? (sites[0]?.id ?? '') : '',
      heldOn: typedDate(context.clock.today()),
      mode: 'centre',
      supervised: 'yes',
    };
    const view = { sites, typed, errors: NO_ERRORS };
    return sendPage(reply, <NewClassView frame={frameOf(request, reply)} {...view} />);
  });

  app.post('/classes/new', pageOf('page:new-class'), async (request, reply) => {
    const form = readForm(request.body);
    const read = entryReader(form);
    const sites = await sitesOfTeam(context, memberOf(request));
    const siteIds = sites.map(({ id }) => id);
    const siteId = read.choice('siteId', siteIds, 'Choose the site.');
    const heldOn = read.date('heldOn', 'Give the day of the class.');
    const mode = read.choice('mode', SESSION_MODES, 'Choose how the class is delivered.');
    const supervised = read.choice('supervised', ['yes', 'no'], 'Choose whether it is supervised.');
    let errors: FormErrors = read.errors;
    if (siteId !== null && heldOn !== null && mode !== null && supervised !== null) {
      const session = { siteId, heldOn, mode, isSupervised: supervised === 'yes' };
      const held = await holdSession(context, memberOf(request), session);
      if (held.kind === 'done') return reply.redirect(`/classes/${held.value.id}`, 303);
      errors = refusalErrors(web, held.refusal, errorsOf);
    }
    const typed = {
      siteId: textOf(form, 'siteId'),
      heldOn: typedDateOf(form, 'heldOn'),
      mode: textOf(form, 'mode'),
      supervised: textOf(form, 'supervised'),
    };
    const view = { sites, typed, errors };
    return sendPage(reply, <NewClassView frame={frameOf(request, reply)} {...view} />, 422);
  });
}

function mondayOf(date: PlainDate): PlainDate {
  return addDays(date, 1 - weekdayOf(date));
}
