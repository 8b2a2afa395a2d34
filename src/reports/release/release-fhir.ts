import type { ProtectedCount } from '../../domain/release/protected-count.js';
import type {
  ProtectedRelease,
  ProtectedShare,
  ProtectedTable,
  ProtectedTotal,
} from '../../domain/release/protected-release.js';

/*
 * A release as a bundle of FHIR R4 measure reports of type summary, one for each table.
 */

const MASKED = {
  extension: [{ url: 'http://hl7.org/fhir/StructureDefinition/data-absent-reason', valueCode: 'masked' }],
} as const;

/** A count, or that it is masked. */
type CountElement = { readonly count: number } | { readonly _count: typeof MASKED };

interface Group {
  readonly code: { readonly text: string };
  readonly population?: readonly ({ readonly code: { readonly text: string } } & CountElement)[];
  readonly measureScore?:
    | { readonly value: number; readonly unit: '%'; readonly system: string; readonly code: '%' }
    | typeof MASKED;
}

/**
 * A bundle as JSON text. One that corrects another names it as its predecessor.
 *
 * @source FHIR R4 (4.0.1), MeasureReport and the extension data-absent-reason; link relation: RFC 5829.
 */
export function releaseFhir(release: ProtectedRelease): string {
  const entries = release.tables.map((table) => ({
    fullUrl: `urn:tidemark:release:${release.number}:${table.id}`,
    resource: measureReport(release, table),
  }));
  return JSON.stringify({
    resourceType: 'Bundle',
    type: 'collection',
    identifier: { system: 'urn:tidemark:release', value: String(release.number) },
    timestamp: `${release.releasedOn}T00:00:00Z`,
    ...(release.correction === null
      ? {}
      : {
          link: [
            {
              relation: 'predecessor-version',
              url: `urn:tidemark:release:${release.correction.ofNumber}`,
            },
          ],
        }),
    entry: entries,
  });
}

function measureReport(release: ProtectedRelease, table: ProtectedTable) {
  const { period, releasedOn, teamName } = release;
  const total = release.totals.find(({ universe }) => universe === table.universe);
  return {
    resourceType: 'MeasureReport',
    status: 'complete',
    type: 'summary',
    measure: `urn:tidemark:measure:${table.id}`,
    date: releasedOn,
    reporter: { display: teamName },
    period: { start: period.firstDay, end: period.lastDay },
    group: [groupOf(table, total), ...table.shares.map(scoreOf)],
  };
}

function groupOf(table: ProtectedTable, total: ProtectedTotal | undefined): Group {
  const cells = table.cells.map((cell) => ({ code: { text: cell.words }, ...countElement(cell.count) }));
  const all = total === undefined ? [] : [{ code: { text: 'all' }, ...countElement(total.count) }];
  return { code: { text: table.title }, population: [...cells, ...all] };
}

/** A percentage of the table; masked where it is not printed. */
function scoreOf({ title, percent }: ProtectedShare): Group {
  return {
    code: { text: title },
    measureScore:
      percent === null
        ? MASKED
        : { value: percent, unit: '%', system: 'http://unitsofmeasure.org', code: '%' },
  };
}

function countElement(count: ProtectedCount): CountElement {
  return count.kind === 'shown' ? { count: count.value } : { _count: MASKED };
}
