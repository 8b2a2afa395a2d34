import type { Fault } from '../refusal/refusal.js';

/**
 * - `rounded`: small counts hidden, all others to the nearest multiple of a base; for anything that leaves the team
 * - `exact`: exact counts, small ones and what would give them away hidden; for a recipient named in an agreement
 */
export const RELEASE_MODES = ['rounded', 'exact'] as const;
export type ReleaseMode = (typeof RELEASE_MODES)[number];

/**
 * A team's choices for what it releases: part of its versioned settings, printed on each release. There is no one legal
 * number: the information governance lead of the team decides.
 */
export interface DisclosureSettings {
  /** In a rounded release, people: counts from 1 to one less are hidden. */
  readonly roundedHidesBelow: number;
  /** Multiple to which a rounded release rounds, people. */
  readonly roundingBase: number;
  /** In an exact release, people: counts from 1 to one less are hidden. */
  readonly exactHidesBelow: number;
  /** People: how far apart the ends of what can be worked out of a hidden count must be at least. */
  readonly minimumWidth: number;
  /** People: a percentage of fewer is not printed. */
  readonly minimumForPercent: number;
  /** People: a mean or median of fewer is not printed, nor a point of a chart. */
  readonly minimumForMeans: number;
}

/**
 * Settings of a new team.
 *
 * @source Rounded: rule of NHS Digital for hospital and emergency care data, from September 2018 (1-7 hidden, the rest to 5).
 *   Exact, width and the floors of percentages and means: our own choices, of the order that published practice has.
 */
export const DEFAULT_DISCLOSURE: DisclosureSettings = {
  roundedHidesBelow: 8,
  roundingBase: 5,
  exactHidesBelow: 5,
  minimumWidth: 5,
  minimumForPercent: 20,
  minimumForMeans: 10,
};

/** What holds for one release. */
export interface DisclosurePolicy {
  readonly mode: ReleaseMode;
  readonly hidesBelow: number;
  /** Null in an exact release. */
  readonly roundingBase: number | null;
  readonly minimumWidth: number;
  readonly minimumForPercent: number;
  readonly minimumForMeans: number;
}

/** The policy of a mode by a team's settings. @example policyOf(DEFAULT_DISCLOSURE, 'exact').hidesBelow -> 5 */
export function policyOf(settings: DisclosureSettings, mode: ReleaseMode): DisclosurePolicy {
  const { minimumWidth, minimumForPercent, minimumForMeans } = settings;
  const shared = { mode, minimumWidth, minimumForPercent, minimumForMeans };
  return mode === 'rounded'
    ? { ...shared, hidesBelow: settings.roundedHidesBelow, roundingBase: settings.roundingBase }
    : { ...shared, hidesBelow: settings.exactHidesBelow, roundingBase: null };
}

const LIMITS: Readonly<Record<keyof DisclosureSettings, { readonly min: number; readonly max: number }>> = {
  // A rounded release must not round a shown count to 0.
  roundedHidesBelow: { min: 5, max: 50 },
  roundingBase: { min: 5, max: 10 },
  exactHidesBelow: { min: 5, max: 50 },
  minimumWidth: { min: 3, max: 20 },
  minimumForPercent: { min: 10, max: 100 },
  minimumForMeans: { min: 10, max: 100 },
};

/** What is wrong with a team's choices, by JSON Pointer below `/disclosure`; empty where they may be kept. */
export function checkDisclosure(settings: DisclosureSettings): readonly Fault[] {
  const faults = Object.entries(LIMITS).flatMap(([key, { min, max }]) => {
    const value = settings[key as keyof DisclosureSettings];
    if (Number.isInteger(value) && value >= min && value <= max) return [];
    const message = `Give a whole number from ${min} to ${max}. You entered ${value}.`;
    return [{ pointer: `/disclosure/${key}`, code: 'out-of-range', message }];
  });
  if (faults.length > 0) return faults;
  const message =
    'Counts that are hidden must be able to lie further apart than the least width, or no release could pass.';
  return settings.roundedHidesBelow - 2 >= settings.minimumWidth
    ? []
    : [{ pointer: '/disclosure/minimumWidth', code: 'out-of-range', message }];
}
