import type { Exposure } from '../../src/domain/release/exposure.js';
import type { IssuedRelease } from '../../src/domain/release/issued.js';
import type { ReleaseMode } from '../../src/domain/release/policy.js';
import { withDefaultLists } from '../../src/domain/release/default-lists.js';
import { presentRelease } from '../../src/domain/release/present-release.js';
import type { Targets } from '../../src/domain/release/present-release.js';
import type { CountedRelease } from '../../src/domain/release/protect-release.js';
import type { ProtectedRelease } from '../../src/domain/release/protected-release.js';
import { settleRelease } from '../../src/domain/release/settle.js';
import type { TableChoices } from '../../src/domain/release/settle.js';
import { countedRelease } from './random-service.js';
import type { Quarter } from './random-service.js';

/** A release of an invented service as it leaves the team, with the counts behind it. */
export function releaseOf(
  quarters: readonly Quarter[],
  about: {
    readonly number: number;
    readonly mode: ReleaseMode;
    readonly period: CountedRelease['period'];
    readonly corrects?: string;
  },
  earlier: readonly IssuedRelease[],
  targets: Targets = {},
): {
  readonly issued: IssuedRelease;
  readonly release: ProtectedRelease;
  readonly isPassed: boolean;
  readonly exposures: readonly Exposure[];
} {
  const { number, mode, period } = about;
  const named = {
    ref: String(number),
    mode,
    period,
    ...(about.corrects === undefined ? {} : { corrects: about.corrects }),
  };
  const count = (lists: TableChoices) => countedRelease(quarters, named, lists);
  const { totals, policy } = count({});
  const { draft } = settleRelease(count, earlier, withDefaultLists(totals, policy, {}));
  const head = {
    number,
    teamName: 'Marram Coast PR team',
    commissionerId: 'commissioner-1',
    commissionerName: 'Marram and Samphire Commissioning',
    period: { ...period, firstDay: '2026-04-01', lastDay: '2027-03-31' },
    dataCut: '2027-06-01',
    releasedOn: '2027-06-01',
    settingsVersion: 1,
    agreement: mode === 'exact' ? 'Agreement 7 of the invented board' : null,
    correction: null,
  };
  return {
    issued: draft.release,
    release: presentRelease(draft.release, head, [], targets),
    isPassed: draft.attack.isPassed,
    exposures: draft.attack.exposures,
  };
}
