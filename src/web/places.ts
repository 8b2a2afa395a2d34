import { mayOpen } from '../auth/access.js';
import type { PageId } from '../auth/access.js';
import type { Role } from '../domain/account/role.js';

/** A place that the row below the top bar leads to. */
export interface Place {
  readonly pageId: PageId;
  readonly path: string;
  readonly label: string;
}

/** The places in the order of a working day; each role sees those that it may open. */
const PLACES: readonly Place[] = [
  { pageId: 'page:work-list', path: '/work-list', label: 'Work list' },
  { pageId: 'page:classes', path: '/classes', label: 'Classes' },
  { pageId: 'page:search', path: '/search', label: 'Find a person' },
  { pageId: 'page:report', path: '/report', label: 'Report' },
  { pageId: 'page:releases', path: '/releases', label: 'Releases' },
  { pageId: 'page:import', path: '/imports', label: 'Import' },
  { pageId: 'page:team', path: '/team', label: 'Team' },
];

/** The places a role may go. */
export function placesOf(role: Role): readonly Place[] {
  return PLACES.filter((place) => mayOpen(role, place.pageId));
}

/** Whether a page lies within a place. @example isWithin('/team/accounts/new', '/team') -> true */
export function isWithin(path: string, place: string): boolean {
  return path === place || path.startsWith(`${place}/`);
}
