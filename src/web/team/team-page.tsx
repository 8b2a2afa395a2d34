import type { PropsWithChildren } from '@kitajs/html';
import { isWithin } from '../places.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';

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
    <Page frame={frame} title={hasErrors ? `Error: ${title}` : title}>
      <nav class="places inner" aria-label="Team">
        <ul>
          {ROOMS.map(({ path, label }) => (
            <li>
              <a href={path} aria-current={isWithin(frame.path, path) ? 'page' : undefined}>
                {label}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      <h1 safe>{title}</h1>
      {children}
    </Page>
  );
}
