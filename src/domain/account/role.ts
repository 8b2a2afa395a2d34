/** What a person may be in this service. */
export const ROLES = ['admin', 'clinician', 'lead', 'commissioner'] as const;
export type Role = (typeof ROLES)[number];
