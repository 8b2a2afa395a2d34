import type { AssessmentEntry } from '../assessment/assessment.js';
import { findSafetyItem } from './conduct.js';
import type { DoneWalks } from './done-walks.js';
import { RESTING_LIMITS } from './resting-limits.js';
import type { SafetyCaution } from './safety-caution.js';
import { cautionToAcknowledge, cautionToShow } from './safety-caution.js';
import type { SafetyItem } from './safety-list.js';
import { HOLLAND_2014_TABLE_4 } from './safety-sources.js';

/** What follows from the safety screen and from the items of the checklist that were found. */
export function findingCautions(
  entry: Pick<AssessmentEntry, 'safetyScreen' | 'safetyFindings'>,
  walks: readonly DoneWalks[],
): readonly SafetyCaution[] {
  const found = entry.safetyFindings.flatMap((id) => findSafetyItem(id) ?? []);
  const despite = walkedDespite(found, walks);
  return [
    ...found.map(foundCaution),
    ...despite,
    ...screenCautions(entry, found, { hasWalked: walks.length > 0, isSaid: despite.length > 0 }),
  ];
}

function foundCaution(item: SafetyItem): SafetyCaution {
  return cautionToAcknowledge({
    id: `found-${item.id}`,
    measureId: null,
    text: `Found: ${item.text}. ${kindWords(item)}`,
    citation: item.citation,
  });
}

function kindWords(item: SafetyItem): string {
  switch (item.strength) {
    case 'absolute':
      return 'An absolute contraindication to a walk test.';
    case 'relative':
      return 'A relative contraindication to a walk test.';
    case 'local':
      return 'A sign to stop, as one community programme has it.';
    case null:
      return 'A sign to stop a walk test.';
  }
}

function walkedDespite(found: readonly SafetyItem[], walks: readonly DoneWalks[]): readonly SafetyCaution[] {
  const absolute = found.filter((item) => item.strength === 'absolute');
  const against = walks.flatMap(({ test, attempts }) => {
    const standing = absolute.filter(
      (item) => !isLiftedByOxygen(item) || attempts.some((walk) => !isOnOxygen(walk.oxygenLPerMin)),
    );
    return standing.length > 0 ? [{ name: test.shortName, items: standing }] : [];
  });
  if (against.length === 0) return [];
  const items = [...new Set(against.flatMap((walk) => walk.items.map((item) => item.text)))];
  const text =
    `${against.map((walk) => walk.name).join(', ')} recorded as done although an absolute contraindication was found: ` +
    `${items.join('; ')}.`;
  return [
    cautionToAcknowledge({
      id: 'walked-despite-absolute-contraindication',
      measureId: null,
      text,
      citation: HOLLAND_2014_TABLE_4,
    }),
  ];
}

function screenCautions(
  { safetyScreen }: Pick<AssessmentEntry, 'safetyScreen'>,
  found: readonly SafetyItem[],
  walk: { readonly hasWalked: boolean; readonly isSaid: boolean },
): readonly SafetyCaution[] {
  const about = { measureId: null, citation: HOLLAND_2014_TABLE_4 };
  switch (safetyScreen) {
    case 'not-recorded': {
      if (!walk.hasWalked) return [];
      const text = 'A walk test was done, and whether contraindications were looked for is not recorded.';
      return [cautionToShow({ ...about, id: 'safety-screen-not-recorded', text })];
    }
    case 'concern': {
      // Where an absolute contraindication is named as well, that says more.
      if (!walk.hasWalked || walk.isSaid) return [];
      const text = 'A walk test was done although the safety screen says that there was a concern.';
      return [cautionToAcknowledge({ ...about, id: 'walked-despite-concern', text })];
    }
    case 'no-concern': {
      if (!found.some((item) => item.strength === 'absolute' || item.strength === 'relative')) return [];
      const text = 'The safety screen says that there was no concern, yet a contraindication was found.';
      return [cautionToShow({ ...about, id: 'safety-screen-disagrees', text })];
    }
  }
}

function isLiftedByOxygen(item: SafetyItem): boolean {
  return RESTING_LIMITS.some((limit) => limit.id === item.id && limit.isOnRoomAirOnly);
}

function isOnOxygen(oxygenLPerMin: number | null): boolean {
  return oxygenLPerMin !== null && oxygenLPerMin > 0;
}
