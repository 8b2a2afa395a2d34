import type { PropsWithChildren } from '@kitajs/html';
import type { Frame } from '../frame.js';
import { RoomsPage } from '../rooms-page.js';

const ROOMS = [
  { path: '/team/accounts', label: 'Accounts' },
  { path: '/team/tokens', label: 'Tokens' },
  { path: '/team/settings', label: 'Settings' },
  { path: '/team/audit-trail', label: 'Audit trail' },
  { path: '/team/export', label: 'Take out' },
] as const;

type TeamPageProps = PropsWithChildren<{
  readonly frame: Frame;
  readonly title: string;
  readonly hasErrors?: boolean;
}>;

/** A page of the lead about the team, with the row that leads to the others. */
export function TeamPage({ frame, title, hasErrors = false, children }: TeamPageProps): JSX.Element {
  return (
    <RoomsPage frame={frame} label="Team" rooms={ROOMS} title={title} hasErrors={hasErrors}>
      {children}
    </RoomsPage>
  );
}
