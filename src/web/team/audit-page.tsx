import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { addDays } from '../../domain/calendar/plain-date.js';
import { londonMidnight } from '../../domain/calendar/london-time.js';
import { listAccounts } from '../../usecases/accounts/change-account.js';
import { listEvents } from '../../usecases/audit/list-events.js';
import { searchPatients } from '../../usecases/patients/find-patients.js';
import { commissionersOfTeam, sitesOfTeam } from '../../usecases/providers.js';
import { readDate, typedDateOf } from '../forms/date-entry.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormError } from '../forms/form-errors.js';
import { readForm, textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { frameOf, sendPage } from '../frame.js';
import { memberOf, pageOf, REPEATABLE } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { AuditView } from './audit-view.js';

const PAGE_SIZE = 50;
const PATH = '/team/audit-trail';
const Id = z.uuid().toLowerCase();

/** The audit trail, by person, patient and time, latest first. */
export function auditPage(app: WebApp, { context }: Web): void {
  const show = async (request: FastifyRequest, reply: FastifyReply, found: readonly FormError[] = []) => {
    const member = memberOf(request);
    const query = readForm(request.query);
    const { filter, after, errors } = readFilter(query);
    const page = await listEvents(context, member, filter, {
      limit: PAGE_SIZE,
      after: after === null ? null : { key: '', id: String(after) },
    });
    const people = await listAccounts(context, member);
    const places = [...(await sitesOfTeam(context, member)), ...(await commissionersOfTeam(context, member))];
    const view = {
      frame: frameOf(request, reply),
      query,
      events: page.rows,
      people,
      placeNames: new Map(places.map(({ id, name }) => [id, name])),
      errors: [...errors, ...found],
      first: after === null ? null : addressOf(query, null),
      next: page.next === null ? null : addressOf(query, page.next.id),
    };
    return sendPage(reply, <AuditView {...view} />, view.errors.length === 0 ? 200 : 422);
  };

  app.get(PATH, pageOf('page:audit-trail'), (request, reply) => show(request, reply));

  // By POST, since a number that says who somebody is stands in no address.
  app.post(`${PATH}/patient`, { ...pageOf('page:audit-trail'), ...REPEATABLE }, async (request, reply) => {
    const nhsNumber = textOf(readForm(request.body), 'nhsNumber');
    const query = { nhsNumber, familyName: null, bornOn: null };
    const { rows } = await searchPatients(context, memberOf(request), query, { limit: 1, after: null });
    const [patient] = rows;
    if (patient === undefined) return show(request, reply, [NOBODY]);
    return reply.redirect(`${PATH}?patient=${patient.id}`, 303);
  });
}

const NOBODY: FormError = {
  field: 'nhsNumber',
  message: 'Nobody of your team has this NHS number. Check the ten digits.',
};

/** What the address asks for; a part that cannot be read is named and left aside. */
function readFilter(query: FormValues) {
  const errors: FormError[] = [];
  const id = (name: string): string | null => {
    const text = textOf(query, name);
    if (text === '') return null;
    const read = Id.safeParse(text);
    if (!read.success)
      errors.push({ field: name, message: 'The address names a record that cannot be. Choose again.' });
    return read.success ? read.data : null;
  };
  const date = (name: string) => {
    const entry = readDate(typedDateOf(query, name));
    if (entry.kind === 'no-date') errors.push({ field: name, message: entry.message });
    return entry.kind === 'date' ? entry.date : null;
  };
  const [accountId, patientId, from, to] = [id('person'), id('patient'), date('from'), date('to')];
  if (from !== null && to !== null && from > to && errorAt(errors, 'to') === null) {
    errors.push({ field: 'to', message: 'The last day must not be before the first.' });
  }
  const filter = {
    accountId,
    patientId,
    from: from === null ? null : londonMidnight(from),
    to: to === null ? null : londonMidnight(addDays(to, 1)),
  };
  const after = /^\d{1,15}$/.exec(textOf(query, 'after'))?.[0];
  return { filter, after: after === undefined ? null : Number(after), errors };
}

function addressOf(query: FormValues, after: string | null): string {
  const next = new URLSearchParams();
  for (const [name, [value = '']] of query) if (name !== 'after' && value !== '') next.set(name, value);
  if (after !== null) next.set('after', after);
  return next.size === 0 ? PATH : `${PATH}?${next.toString()}`;
}
