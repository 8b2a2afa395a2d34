import type { PropsWithChildren } from '@kitajs/html';
import type { Frame } from './frame.js';
import { Page } from './page.js';
import { isWithin } from './places.js';

type RoomsPageProps = PropsWithChildren<{
  readonly frame: Frame;
  /** What the rooms have in common, for whoever hears the row. */
  readonly label: string;
  readonly rooms: readonly { readonly path: string; readonly label: string }[];
  readonly title: string;
  readonly hasErrors?: boolean;
}>;

/** A page of a place with several rooms, under the row that leads to the others. */
export function RoomsPage({
  frame,
  label,
  rooms,
  title,
  hasErrors = false,
  children,
}: RoomsPageProps): JSX.Element {
  return (
    <Page frame={frame} title={hasErrors ? `Error: ${title}` : title}>
      <nav class="places inner" aria-label={label}>
        <ul>
          {rooms.map((room) => (
            <li>
              <a href={room.path} aria-current={isWithin(frame.path, room.path) ? 'page' : undefined}>
                <span safe>{room.label}</span>
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
