import type { ProtectedRelease } from './protected-release.js';

/**
 * A release as text that is always the same: names in alphabetical order, no spaces. The digest of a release is taken over
 * these bytes.
 */
export function canonicalText(release: ProtectedRelease): string {
  return write(release);
}

/** A release read from the text that was kept of it; the caller has checked its digest. */
export function readReleased(text: string): ProtectedRelease {
  const release = JSON.parse(text) as ProtectedRelease;
  const { correction } = release;
  // The first corrections did not state their difference.
  return correction === null
    ? release
    : { ...release, correction: { ...correction, changes: correction.changes ?? [] } };
}

function write(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(write).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
    return `{${entries.map(([key, each]) => `${JSON.stringify(key)}:${write(each)}`).join(',')}}`;
  }
  return JSON.stringify(value);
}
