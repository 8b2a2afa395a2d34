import { z } from 'zod';
import { listAccounts } from '../../usecases/accounts/change-account.js';
import { listTokens, revokeToken } from '../../usecases/accounts/tokens.js';
import { TokenTable } from '../account/token-table.js';
import { frameOf, sendPage } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { TeamPage } from './team-page.js';

const Params = z.object({ tokenId: z.string() });

/** The tokens of everybody in the team, to be taken back where they should not be used any more. */
export function tokenListPage(app: WebApp, web: Web): void {
  const { context } = web;
  app.get('/team/tokens', pageOf('page:tokens'), async (request, reply) => {
    const member = memberOf(request);
    const [tokens, accounts] = await Promise.all([
      listTokens(context, member),
      listAccounts(context, member),
    ]);
    const names = new Map(accounts.map(({ id, displayName }) => [id, displayName]));
    const frame = frameOf(request, reply);
    const table = {
      frame,
      tokens,
      now: context.clock.now(),
      revokeAction: (id: string) => `/team/tokens/${id}/revoke`,
      ownerOf: (accountId: string) => names.get(accountId) ?? 'somebody who left',
    };
    return sendPage(
      reply,
      <TeamPage frame={frame} title="Tokens">
        <p>
          A token lets a program use this service in somebody's name. It never reaches higher than its owner's
          role, and is void while its owner is suspended.
        </p>
        <TokenTable {...table} />
      </TeamPage>,
    );
  });

  app.post('/team/tokens/:tokenId/revoke', pageOf('page:tokens'), async (request, reply) => {
    const { tokenId } = Params.parse(request.params);
    const outcome = await revokeToken(context, memberOf(request), { tokenId, reason: null });
    if (outcome.kind === 'refused') return sendRefusal(web, request, reply, outcome.refusal);
    return reply.redirect('/team/tokens', 303);
  });
}
