import { ROLE_WORDS } from '../../domain/account/role-words.js';
import { listAccounts } from '../../usecases/accounts/change-account.js';
import type { AccountView } from '../../usecases/accounts/account-view.js';
import { ButtonLink, Tag } from '../components/parts.js';
import { Table, Text } from '../components/table.js';
import { frameOf, sendPage } from '../frame.js';
import type { Frame } from '../frame.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { accountState, signInWords } from './account-words.js';
import { TeamPage } from './team-page.js';

/** The accounts of the team and of those who pay for it. */
export function accountListPage(app: WebApp, { context }: Web): void {
  app.get('/team', pageOf('page:team'), (_request, reply) => reply.redirect('/team/accounts', 303));

  app.get('/team/accounts', pageOf('page:accounts'), async (request, reply) => {
    const accounts = await listAccounts(context, memberOf(request));
    return sendPage(reply, <AccountListView frame={frameOf(request, reply)} accounts={accounts} />);
  });
}

interface AccountListViewProps {
  readonly frame: Frame;
  readonly accounts: readonly AccountView[];
}

function AccountListView({ frame, accounts }: AccountListViewProps): JSX.Element {
  return (
    <TeamPage frame={frame} title="Accounts">
      <p>Everybody who may sign in here: the people of your team, and the commissioners who pay for it.</p>
      <div class="actions">
        <ButtonLink href="/team/accounts/new" kind="primary">
          Invite somebody
        </ButtonLink>
      </div>
      <Table
        caption={`${accounts.length} accounts, by name`}
        isStacked
        columns={[
          { head: 'Name' },
          { head: 'Role' },
          { head: 'Sign-in name' },
          { head: 'Signs in by' },
          { head: 'State' },
        ]}
        rows={accounts.map((account) => [
          <a href={`/team/accounts/${account.id}`} safe>
            {account.displayName}
          </a>,
          <Text value={ROLE_WORDS[account.role]} />,
          <Text value={account.signInName ?? 'none'} />,
          <Text value={signInWords(account)} />,
          <Tag kind={stateKind(account)} label={accountState(account)} />,
        ])}
      />
    </TeamPage>
  );
}

function stateKind(account: AccountView) {
  if (account.status === 'suspended') return 'warning';
  return accountState(account) === 'active' ? 'good' : 'check';
}
