import { londonTime } from '../../domain/calendar/london-time.js';
import type { Invited } from '../../usecases/accounts/invite-account.js';
import { Notice } from '../components/notice.js';
import type { Frame } from '../frame.js';
import { TeamPage } from './team-page.js';

interface InvitationLinkViewProps {
  readonly frame: Frame;
  readonly invited: Invited;
  /** Host, with its port where it has one, under which the lead uses the service. */
  readonly host: string;
}

/** Shows the link of an invitation, once. */
export function InvitationLinkView({ frame, invited, host }: InvitationLinkViewProps): JSX.Element {
  const { account, invitationSecret } = invited;
  const until = account.invitation === null ? '' : londonTime(account.invitation.expiresAt);
  return (
    <TeamPage frame={frame} title={`The link for ${account.displayName}`}>
      <Notice kind="check" title="It is shown this once">
        <p safe>
          {`Copy it now and send it by a way that only ${account.displayName} reads. It can be used once, until ${until}.`}
        </p>
      </Notice>
      <p class="panel code" safe>
        {linkOf(host, invitationSecret)}
      </p>
      <p>
        <a href={`/team/accounts/${account.id}`}>Go to the account</a>
      </p>
    </TeamPage>
  );
}

/**
 * The address behind an invitation. The service is used over an encrypted line, but for one on the reader's own machine.
 *
 * @example linkOf('tidemark.example', 'tdi_x') -> 'https://tidemark.example/invitation/tdi_x'
 */
export function linkOf(host: string, secret: string): string {
  const isOwnMachine = /^(?:localhost|127\.0\.0\.1|\[::1\])(?::\d+)?$/.test(host);
  return `${isOwnMachine ? 'http' : 'https'}://${host}/invitation/${secret}`;
}
