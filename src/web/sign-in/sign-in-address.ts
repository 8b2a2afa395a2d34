/** Why somebody stands before the sign-in page without having asked for it. */
const SIGN_IN_REASONS = ['ended', 'unsent', 'kept'] as const;
export type SignInReason = (typeof SIGN_IN_REASONS)[number];

/**
 * The sign-in page, which leads back to a page of this service.
 *
 * @example signInAddress('/account', 'ended') -> '/sign-in?next=%2Faccount&why=ended'
 */
export function signInAddress(next: string, why: SignInReason | null): string {
  const query = new URLSearchParams();
  if (next !== '/') query.set('next', next);
  if (why !== null) query.set('why', why);
  return query.size === 0 ? '/sign-in' : `/sign-in?${query.toString()}`;
}

/** The reason that an address names; null where it names none that is known. */
export function signInReasonOf(value: unknown): SignInReason | null {
  return SIGN_IN_REASONS.find((reason) => reason === value) ?? null;
}

const HERE = 'http://tidemark.invalid';
const LONGEST = 2000;

/**
 * Where to go after signing in: a path of this service, and never another host, whatever an address was made to say.
 *
 * @example ownPath('/account?a=b') -> '/account?a=b'; ownPath('//elsewhere.example') -> '/'; ownPath('https://x') -> '/'
 */
export function ownPath(next: unknown): string {
  if (typeof next !== 'string' || next.length > LONGEST || !/^\/(?![/\\])[!-~]*$/.test(next)) return '/';
  const url = URL.canParse(next, HERE) ? new URL(next, HERE) : null;
  if (url === null || url.origin !== HERE) return '/';
  const path = `${url.pathname}${url.search}`;
  // A path such as /.//elsewhere.example becomes one with two slashes when it is resolved.
  if (path.startsWith('//') || /^\/sign-(?:in|out)(?:[/?]|$)/.test(path)) return '/';
  return path;
}
