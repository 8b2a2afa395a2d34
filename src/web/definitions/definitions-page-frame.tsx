import type { PropsWithChildren } from '@kitajs/html';
import type { Frame } from '../frame.js';
import { RoomsPage } from '../rooms-page.js';

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
    <RoomsPage frame={frame} label="Definitions" rooms={ROOMS} title={title}>
      {children}
    </RoomsPage>
  );
}
