import { TEAM_ROLES } from './role.js';
import type { TeamRole } from './role.js';

/** Which value of a provider's claim stands for which role. */
export type RoleMapping = ReadonlyMap<string, TeamRole>;

/**
 * The role that a provider gives somebody: the highest of those that its values stand for.
 *
 * @returns null where none of them stands for a role
 * @example with pr-office for admin and pr-lead for lead: ['pr-office', 'pr-lead', 'staff'] -> 'lead'
 */
export function mappedRole(values: readonly string[], mapping: RoleMapping): TeamRole | null {
  const given = values.flatMap((value) => mapping.get(value) ?? []);
  return TEAM_ROLES.findLast((role) => given.includes(role)) ?? null;
}
