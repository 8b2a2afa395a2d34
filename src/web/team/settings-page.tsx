import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Meanwhile } from '../../domain/history/history.js';
import { changeSettings, readSettings } from '../../usecases/settings/change-settings.js';
import { readHistory } from '../../usecases/history/read-history.js';
import { errorsOf, NO_ERRORS } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { readForm, textOf, wholeNumberOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { frameOf, sendPage } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { formOf, readSettingsForm, settingsFieldOf } from './settings-form.js';
import { SettingsHistoryView } from './settings-history-view.js';
import { SettingsView } from './settings-view.js';

interface Shown {
  readonly form?: FormValues;
  readonly errors?: FormErrors;
  readonly meanwhile?: Meanwhile;
  readonly status?: number;
}

/** The team's settings: every change makes a new version, and former ones stay. */
export function settingsPages(app: WebApp, web: Web): void {
  const { context } = web;
  const page = pageOf('page:settings');
  const show = async (request: FastifyRequest, reply: FastifyReply, shown: Shown = {}) => {
    const { version, settings } = await readSettings(context, memberOf(request));
    const { form = formOf(settings), errors = NO_ERRORS, meanwhile = null, status = 200 } = shown;
    // Who has seen what changed meanwhile decides anew; other errors leave the version that was read.
    const isRetried = shown.form !== undefined && meanwhile === null;
    const basedOn = isRetried ? textOf(form, 'version') : String(version);
    const view = { frame: frameOf(request, reply), version, basedOn, form, errors, meanwhile };
    return sendPage(reply, <SettingsView {...view} />, status);
  };

  app.get('/team/settings', page, (request, reply) => show(request, reply));

  app.post('/team/settings', page, async (request, reply) => {
    const form = readForm(request.body);
    const read = readSettingsForm(form);
    if (read.kind === 'faulty') return show(request, reply, { form, errors: read.errors, status: 422 });
    const { settings, reason } = read;
    const basedOn = [wholeNumberOf(form, 'version') ?? -1];
    const outcome = await changeSettings(context, memberOf(request), { settings, reason, basedOn });
    if (outcome.kind === 'done') return reply.redirect('/team/settings', 303);
    const { refusal } = outcome;
    if (refusal.code === 'rules-broken') {
      return show(request, reply, { form, errors: errorsOf(refusal.faults, settingsFieldOf), status: 422 });
    }
    if (refusal.code === 'changed-meanwhile') {
      return show(request, reply, { form, meanwhile: refusal.meanwhile, status: 412 });
    }
    return sendRefusal(web, request, reply, refusal);
  });

  app.get('/team/settings/history', page, async (request, reply) => {
    const member = memberOf(request);
    const outcome = await readHistory(context, member, 'settings', member.teamId);
    const entries = outcome.kind === 'done' ? outcome.value : [];
    return sendPage(reply, <SettingsHistoryView frame={frameOf(request, reply)} entries={entries} />);
  });
}
