import type { Generated } from 'kysely';

/** Tables of people and programs that may sign in. */
export interface AccountTable {
  id: string;
  team_id: string | null;
  commissioner_id: string | null;
  role: string;
  display_name: string;
  status: string;
  created_at: string;
  version: Generated<number>;
  sign_in_name: string | null;
  passphrase_hash: string | null;
  passphrase_set_at: string | null;
  second_factor_secret: string | null;
  /** Null while the person has not shown a code of it. */
  second_factor_confirmed_at: string | null;
  /** The latest time step of which a code was taken: none is taken twice. */
  second_factor_last_step: number | null;
  /** Issuer and subject of the provider by which the person signs in. */
  oidc_subject: string | null;
}

export interface ApiTokenTable {
  id: string;
  account_id: string;
  name: string;
  token_hash: string;
  role: string;
  created_at: string;
  expires_at: string;
  revoked_at: string | null;
}

export interface InvitationTable {
  id: string;
  account_id: string;
  purpose: string;
  token_hash: string;
  created_by: string;
  created_at: string;
  expires_at: string;
  used_at: string | null;
  revoked_at: string | null;
}

export interface LoginSessionTable {
  id: string;
  account_id: string;
  token_hash: string;
  second_factor_passed: number;
  created_at: string;
  last_used_at: string;
  /** Whatever happens, the session ends here. */
  expires_at: string;
  ended_at: string | null;
  ended_reason: string | null;
}

/** Wrong attempts by the hash of what they were made with; nothing that was typed is kept. */
export interface SignInDelayTable {
  key_hash: string;
  kind: string;
  failures: number;
  last_failed_at: string;
  blocked_until: string | null;
}
