import type { FastifyReply, FastifyRequest } from 'fastify';
import { readSearch } from '../../domain/patient/read-search.js';
import { searchPeople } from '../../usecases/patients/search-people.js';
import { sitesOfTeam } from '../../usecases/providers.js';
import { readForm, textOf } from '../forms/form-values.js';
import { NO_ERRORS } from '../forms/form-errors.js';
import { frameOf, sendPage } from '../frame.js';
import { memberOf, pageOf, REPEATABLE } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { keptSearches } from './kept-searches.js';
import { SearchView } from './search-view.js';

/** People shown of a search. */
const SHOWN = 30;
const LONGEST = 200;

/**
 * Finds people. What is typed goes in the body of a form and is kept in memory: the address of the result holds an id
 * that means nothing, so that a reload or a step back shows the result again and no log ever holds a name.
 */
export function searchPages(app: WebApp, { context }: Web): void {
  const kept = keptSearches(context);

  app.get('/search', pageOf('page:search'), (request, reply) => showForm(request, reply, ''));

  app.post('/search', { ...pageOf('page:search'), ...REPEATABLE }, (request, reply) => {
    const typed = textOf(readForm(request.body), 'q').slice(0, LONGEST);
    const isReadable = readSearch(typed).some(
      ({ nhsNumber, familyName, bornOn }) => (nhsNumber ?? familyName ?? bornOn) !== null,
    );
    if (!isReadable) {
      reply.code(422);
      return showForm(request, reply, typed, [
        { field: 'q', message: 'Type an NHS number, the start of a family name, or a date of birth.' },
      ]);
    }
    return reply.redirect(`/search/${kept.keep(memberOf(request).accountId, typed)}`, 303);
  });

  app.get<{ Params: { searchId: string } }>(
    '/search/:searchId',
    pageOf('page:search'),
    async (request, reply) => {
      const actor = memberOf(request);
      const typed = kept.find(actor.accountId, request.params.searchId);
      if (typed === null) return reply.redirect('/search', 303);
      const found = await searchPeople(context, actor, readSearch(typed), SHOWN);
      const sites = await sitesOfTeam(context, actor);
      return sendPage(
        reply,
        <SearchView
          frame={frameOf(request, reply)}
          typed={typed}
          errors={NO_ERRORS}
          found={found}
          today={context.clock.today()}
          siteNames={new Map(sites.map(({ id, name }) => [id, name]))}
        />,
      );
    },
  );

  function showForm(
    request: FastifyRequest,
    reply: FastifyReply,
    typed: string,
    errors = NO_ERRORS,
  ): FastifyReply {
    return sendPage(
      reply,
      <SearchView
        frame={frameOf(request, reply)}
        typed={typed}
        errors={errors}
        found={null}
        today={context.clock.today()}
        siteNames={new Map()}
      />,
      reply.statusCode,
    );
  }
}
