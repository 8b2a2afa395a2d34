import type { AttackReport } from './protect-release.js';
import type { IssuedRelease } from './issued.js';
import type { ReleaseMode } from './policy.js';

/** Forms in which a release is kept beside its canonical JSON. */
export const RELEASE_FORMS = ['csv', 'xlsx', 'pdf', 'fhir'] as const;
export type ReleaseForm = (typeof RELEASE_FORMS)[number];

/** A release in a list; nothing in it is counted. */
export interface ReleaseEntry {
  readonly number: number;
  readonly teamId: string;
  readonly teamName: string;
  readonly commissionerId: string;
  readonly commissionerName: string;
  readonly period: string;
  readonly mode: ReleaseMode;
  readonly releasedAt: string;
  readonly digest: string;
  readonly corrects: number | null;
  /** Number of the release that corrects it; null while it stands. */
  readonly correctedBy: number | null;
  readonly withdrawn: { readonly at: string; readonly reason: string } | null;
}

/** What the team keeps of a release beside what left it. */
export interface KeptCounts {
  readonly number: number;
  readonly issued: IssuedRelease;
  readonly attack: AttackReport;
  readonly attackedAt: string;
}
