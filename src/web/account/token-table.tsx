import { ROLE_WORDS } from '../../domain/account/role-words.js';
import { londonTime } from '../../domain/calendar/london-time.js';
import type { StoredToken } from '../../storage/accounts/tokens.js';
import { Button, Form } from '../components/form.js';
import { EmptyState, Tag } from '../components/parts.js';
import { Table, Text } from '../components/table.js';
import type { Frame } from '../frame.js';

interface TokenTableProps {
  readonly frame: Frame;
  readonly tokens: readonly StoredToken[];
  readonly now: string;
  readonly revokeAction: (tokenId: string) => string;
  /** Name of the owner by account id, where tokens of several people are shown. */
  readonly ownerOf?: (accountId: string) => string;
}

/** Tokens, those that can be used first; of their secrets there is nothing to show. */
export function TokenTable({ frame, tokens, now, revokeAction, ownerOf }: TokenTableProps): JSX.Element {
  if (tokens.length === 0) return <EmptyState>There are no tokens.</EmptyState>;
  const isUsable = (token: StoredToken): boolean => token.revokedAt === null && token.expiresAt > now;
  const sorted = [...tokens].sort((a, b) => Number(isUsable(b)) - Number(isUsable(a)));
  const owner = ownerOf === undefined ? [] : [{ head: 'Whose' }];
  return (
    <Table
      caption="Tokens"
      isStacked
      columns={[
        { head: 'Name' },
        ...owner,
        { head: 'Role' },
        { head: 'Made' },
        { head: 'Ends' },
        { head: 'State' },
        { head: 'Action' },
      ]}
      rows={sorted.map((token) => [
        <Text value={token.name} />,
        ...(ownerOf === undefined ? [] : [<Text value={ownerOf(token.accountId)} />]),
        <Text value={ROLE_WORDS[token.role]} />,
        <Text value={londonTime(token.createdAt)} />,
        <Text value={londonTime(token.expiresAt)} />,
        <StateTag token={token} now={now} />,
        isUsable(token) ? (
          <Form
            frame={frame}
            action={revokeAction(token.id)}
            label={`Take back ${token.name}${ownerOf === undefined ? '' : ` of ${ownerOf(token.accountId)}`}, made ${londonTime(token.createdAt)}`}
          >
            <Button isSmall kind="grave">
              Take back
            </Button>
          </Form>
        ) : (
          ''
        ),
      ])}
    />
  );
}

function StateTag({ token, now }: { readonly token: StoredToken; readonly now: string }): JSX.Element {
  if (token.revokedAt !== null) return <Tag label="taken back" />;
  return token.expiresAt > now ? <Tag kind="good" label="in use" /> : <Tag label="ended" />;
}
