import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { ACCOUNT_STATUSES } from '../../domain/account/account.js';
import { ROLES } from '../../domain/account/role.js';
import type { Meanwhile } from '../../domain/history/history.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { changeAccount, getAccount } from '../../usecases/accounts/change-account.js';
import { resetSecondFactor, signOutAccount } from '../../usecases/accounts/help-account.js';
import { renewInvitation } from '../../usecases/accounts/invite-account.js';
import type { TeamMember } from '../../usecases/context.js';
import { errorsOf, NO_ERRORS } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { readForm, textOf, wholeNumberOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { lineFault, reasonFault } from '../forms/line.js';
import { frameOf, sendPage } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { AccountFormView } from './account-form-view.js';
import { InvitationLinkView } from './invitation-link-view.js';
import { DISPLAY_NAME_MAX, NAME_TAKEN } from './invite-page.js';

const Params = z.object({ accountId: z.string() });

interface Shown {
  readonly form?: FormValues;
  readonly errors?: FormErrors;
  readonly meanwhile?: Meanwhile;
  readonly status?: number;
}

/** One account: change it, invite its holder again, help who cannot sign in. */
export function accountPage(app: WebApp, web: Web): void {
  const { context } = web;
  const page = pageOf('page:accounts');
  const idOf = (request: FastifyRequest): string => Params.parse(request.params).accountId;
  const show = async (request: FastifyRequest, reply: FastifyReply, shown: Shown = {}) => {
    const member = memberOf(request);
    const found = await getAccount(context, member, idOf(request));
    if (found.kind === 'refused') return sendRefusal(web, request, reply, found.refusal);
    const { form = null, errors = NO_ERRORS, meanwhile = null, status = 200 } = shown;
    const isOwn = found.value.id === member.accountId;
    const view = { frame: frameOf(request, reply), account: found.value, isOwn, form, errors, meanwhile };
    return sendPage(reply, <AccountFormView {...view} />, status);
  };

  app.get('/team/accounts/:accountId', page, (request, reply) => show(request, reply));

  app.post('/team/accounts/:accountId', page, async (request, reply) => {
    const form = readForm(request.body);
    const refuse = (errors: FormErrors) => show(request, reply, { form, errors, status: 422 });
    const read = readChange(form);
    if (read.kind === 'faulty') return refuse(read.errors);
    const { basedOn, reason, changes } = read;
    const change = { accountId: idOf(request), basedOn, reason, changes };
    const outcome = await changeAccount(context, memberOf(request), change);
    if (outcome.kind === 'done') return reply.redirect(request.url, 303);
    const { refusal } = outcome;
    if (refusal.code === 'rules-broken') return refuse(errorsOf(refusal.faults));
    if (refusal.code === 'changed-meanwhile') {
      return show(request, reply, { form, meanwhile: refusal.meanwhile, status: 412 });
    }
    if (refusal.code === 'own-account' || refusal.code === 'last-lead') {
      return refuse([{ field: '', message: web.wordsFor(refusal).detail }]);
    }
    return sendRefusal(web, request, reply, refusal);
  });

  app.post('/team/accounts/:accountId/invitation', page, async (request, reply) => {
    const signInName = textOf(readForm(request.body), 'signInName');
    const wanted = { accountId: idOf(request), signInName: signInName === '' ? null : signInName };
    const outcome = await renewInvitation(context, memberOf(request), wanted);
    if (outcome.kind === 'done') {
      const view = { frame: frameOf(request, reply), invited: outcome.value, host: request.host };
      return sendPage(reply, <InvitationLinkView {...view} />);
    }
    const { refusal } = outcome;
    if (refusal.code === 'sign-in-name-taken')
      return show(request, reply, { errors: [NAME_TAKEN], status: 422 });
    if (refusal.code !== 'rules-broken') return sendRefusal(web, request, reply, refusal);
    return show(request, reply, { errors: errorsOf(refusal.faults), status: 422 });
  });

  helpRoute('second-factor-removal', 'secondFactorReason', (member, help) =>
    resetSecondFactor(context, member, help),
  );
  helpRoute('sign-out-everywhere', 'signOutReason', (member, help) => signOutAccount(context, member, help));

  /** Something that is done to an account for a reason. */
  function helpRoute(
    name: string,
    reasonField: string,
    help: (
      member: TeamMember,
      request: { readonly accountId: string; readonly reason: string },
    ) => Promise<Outcome<unknown>>,
  ): void {
    app.post(`/team/accounts/:accountId/${name}`, page, async (request, reply) => {
      const reason = textOf(readForm(request.body), reasonField);
      const fault = reasonFault(reasonField, reason);
      if (fault !== null) return show(request, reply, { errors: [fault], status: 422 });
      const accountId = idOf(request);
      const outcome = await help(memberOf(request), { accountId, reason });
      if (outcome.kind === 'refused') return sendRefusal(web, request, reply, outcome.refusal);
      return reply.redirect(`/team/accounts/${accountId}`, 303);
    });
  }
}

/** A change as it was typed, or what is wrong with it. */
function readChange(form: FormValues) {
  const displayName = textOf(form, 'displayName');
  const role = ROLES.find((known) => known === textOf(form, 'role'));
  const status = ACCOUNT_STATUSES.find((known) => known === textOf(form, 'status'));
  const reason = textOf(form, 'reason');
  const errors = [
    lineFault('displayName', displayName, DISPLAY_NAME_MAX),
    role === undefined ? { field: 'role', message: 'Choose a role.' } : null,
    status === undefined ? { field: 'status', message: 'Choose active or suspended.' } : null,
    reasonFault('reason', reason),
  ].filter((fault) => fault !== null);
  if (errors.length > 0 || role === undefined || status === undefined)
    return { kind: 'faulty', errors } as const;
  const basedOn = [wholeNumberOf(form, 'version') ?? -1];
  return { kind: 'change', basedOn, reason, changes: { displayName, role, status } } as const;
}
