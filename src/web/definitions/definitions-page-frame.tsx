import type { PropsWithChildren } from '@kitajs/html';
import { isWithin } from '../places.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';

const ROOMS = [
  { path: '/definitions/measures', label: 'Measures' },
  { path: '/definitions/indicators', label: 'Indicators' },
  { path: '/definitions/equations', label: 'Equations and norms' },
  { path: '/definitions/sources', label: 'Sources' },
] as const;

type DefinitionsPageProps = PropsWithChildren<{ readonly frame: Frame; readonly title: string }>;

/** A page of the definitions, with the row that leads to the others. */
export function DefinitionsPage({ frame, title, children }: DefinitionsPageProps): JSX.Element {
  return (
    <Page frame={frame} title={title}>
      <nav class="places inner" aria-label="Definitions">
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
