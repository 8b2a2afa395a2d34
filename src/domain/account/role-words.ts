import type { Role } from './role.js';

/** The roles as readers see them. */
export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  admin: 'Administrator',
  clinician: 'Clinician',
  lead: 'Team lead',
  commissioner: 'Commissioner',
};
