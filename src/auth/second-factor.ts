import { Secret, TOTP } from 'otpauth';

/**
 * One-time passwords by time: what authenticator programs take for granted.
 *
 * @source RFC 6238 (SHA-1, steps of 30 s) on RFC 4226 (six digits); one step of drift each way, RFC 6238 section 5.2
 */
const RULES = { algorithm: 'SHA1', digits: 6, period: 30 } as const;
const STEPS_OF_DRIFT = 1;
const SECRET_BYTES = 20;

/** A new secret of 160 random bits, as Base32: what RFC 4226 recommends for SHA-1. */
export function makeSecondFactorSecret(): string {
  return new Secret({ size: SECRET_BYTES }).base32;
}

/** The address by which an authenticator program takes the secret over. */
export function secondFactorUri(secret: string, account: string): string {
  return new TOTP({ ...RULES, issuer: 'Tidemark', label: account, secret }).toString();
}

/**
 * The time step of a code.
 *
 * @param secret Base32
 * @param code six digits, space between them left aside
 * @param atMs the present instant in milliseconds since 1970
 * @returns the step, counted in half minutes since 1970, or null when the code is none of the steps that are taken
 */
export function stepOfCode(secret: string, code: string, atMs: number): number | null {
  const digits = code.replace(/\s/g, '');
  if (!/^[0-9]{6}$/.test(digits)) return null;
  const drift = TOTP.validate({
    ...RULES,
    secret: Secret.fromBase32(secret),
    token: digits,
    timestamp: atMs,
    window: STEPS_OF_DRIFT,
  });
  return drift === null ? null : TOTP.counter({ period: RULES.period, timestamp: atMs }) + drift;
}
