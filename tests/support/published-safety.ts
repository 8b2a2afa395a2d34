import { expect, it } from 'vitest';
import type { EvidenceStatus } from '../../src/domain/evidence/citation.js';
import { findSafetyItem } from '../../src/domain/safety/conduct.js';
import { DESATURATION_DEFINITIONS } from '../../src/domain/safety/desaturation.js';
import type { DesaturationDefinitionId } from '../../src/domain/safety/desaturation.js';
import { SAFETY_CHECKLIST } from '../../src/domain/safety/registered.js';
import { RESTING_LIMITS } from '../../src/domain/safety/resting-limits.js';
import type { RestingLimit } from '../../src/domain/safety/resting-limits.js';
import type { SafetyItem } from '../../src/domain/safety/safety-list.js';

/*
 * Checks of safety against what a source prints. Each names the checked entry as its first argument, a plain string, so
 * that the test of completeness finds it.
 */

/** What a source says of one item. */
export interface PublishedItem {
  readonly list: string;
  readonly strength: SafetyItem['strength'];
  readonly canBeFound: boolean;
  readonly citationId: string;
  readonly status: EvidenceStatus;
  readonly doi: string | null;
  /** Words and figures of the source that the text or the note must hold. */
  readonly says: readonly string[];
}

/** An item stands in its list, cites its source with its status, and holds the figures of the source. */
export function publishedSafetyItem(id: string, printed: PublishedItem): void {
  it(`checklist: ${id}`, () => {
    const item = findSafetyItem(id);
    const list = SAFETY_CHECKLIST.find(({ items }) => items.some((each) => each.id === id));
    expect({
      list: list?.id,
      strength: item?.strength,
      canBeFound: item?.canBeFound,
      citationId: item?.citation.id,
      status: item?.citation.status,
      doi: item?.citation.doi,
    }).toEqual({
      list: printed.list,
      strength: printed.strength,
      canBeFound: printed.canBeFound,
      citationId: printed.citationId,
      status: printed.status,
      doi: printed.doi,
    });
    const words = `${item?.text ?? ''} ${item?.note ?? ''}`;
    for (const figure of printed.says) expect(words).toContain(figure);
  });
}

/** The ids of a list, in the order of its source. */
export function publishedSafetyList(id: string, ids: readonly string[]): void {
  it(`checklist: ${id} has these ${ids.length} items and no other`, () => {
    const list = SAFETY_CHECKLIST.find((each) => each.id === id);
    expect(list?.items.map((item) => item.id)).toEqual(ids);
  });
}

/** What a source says of one limit at rest. */
export type PublishedLimit = Pick<
  RestingLimit,
  'field' | 'reachedWhen' | 'value' | 'unit' | 'strength' | 'isOnRoomAirOnly' | 'usedBy'
> & { readonly citationId: string; readonly status: EvidenceStatus };

/** A limit at rest is the printed one, with its sign. */
export function publishedRestingLimit(id: string, printed: PublishedLimit): void {
  it(`resting limit: ${id}`, () => {
    const limit = RESTING_LIMITS.find((each) => each.id === id);
    const { citationId, status, ...rule } = printed;
    expect(limit).toMatchObject({ ...rule, citation: { id: citationId, status } });
  });
}

/** A meaning of desaturation is the printed one. */
export function publishedDesaturation(
  id: DesaturationDefinitionId,
  printed: {
    readonly fallPoints: number | null;
    readonly lowest: { readonly is: 'below' | 'at-or-below'; readonly percent: number } | null;
    readonly isJudgedInFull: boolean;
    readonly citationId: string;
    readonly status: EvidenceStatus;
    readonly doi: string | null;
  },
): void {
  it(`desaturation: ${id}`, () => {
    const { fallPoints, lowest, notJudged, citation } = DESATURATION_DEFINITIONS[id];
    expect({
      fallPoints,
      lowest,
      isJudgedInFull: notJudged === null,
      citationId: citation.id,
      status: citation.status,
      doi: citation.doi,
    }).toEqual(printed);
  });
}
