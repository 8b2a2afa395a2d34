/** What a person may be in this service. */
export const ROLES = ['admin', 'clinician', 'lead', 'commissioner'] as const;
export type Role = (typeof ROLES)[number];

/** The roles of a team: each may do all that the one before may, and more. */
export const TEAM_ROLES = ['admin', 'clinician', 'lead'] as const satisfies readonly Role[];
export type TeamRole = (typeof TEAM_ROLES)[number];

/**
 * The lower of two roles; null where they cannot be compared: a commissioner stands beside the team, not below it.
 *
 * A token acts in the lower of its own role and its owner's present one, so that an owner who is given a lower role is
 * followed by every token at once.
 *
 * @example lowerRole('lead', 'admin') -> 'admin'
 */
export function lowerRole(one: Role, other: Role): Role | null {
  if (one === 'commissioner' || other === 'commissioner') return one === other ? one : null;
  return TEAM_ROLES.indexOf(one) < TEAM_ROLES.indexOf(other) ? one : other;
}

/** Whether a role is no higher than that of somebody who hands it on. */
export function isWithin(role: Role, owner: Role): boolean {
  return lowerRole(role, owner) === role;
}
