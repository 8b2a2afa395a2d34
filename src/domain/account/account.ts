export const ACCOUNT_STATUSES = ['active', 'suspended'] as const;
export type AccountStatus = (typeof ACCOUNT_STATUSES)[number];

/** Why an invitation was made: to join, or to choose a new passphrase. */
export const INVITATION_PURPOSES = ['join', 'reset'] as const;
export type InvitationPurpose = (typeof INVITATION_PURPOSES)[number];

/** Why a session ended before its time. */
export const SESSION_ENDS = [
  'signed-out',
  'signed-out-everywhere',
  'passphrase-changed',
  'second-factor-changed',
  'suspended',
] as const;
export type SessionEnd = (typeof SESSION_ENDS)[number];

/** How long an invitation to join may be used, and one to choose a new passphrase. */
export const INVITATION_LIFE_S: Readonly<Record<InvitationPurpose, number>> = {
  join: 7 * 24 * 3600,
  reset: 24 * 3600,
};

/** Days for which an API token may be valid. */
export const TOKEN_DAYS = { min: 1, max: 366 } as const;
