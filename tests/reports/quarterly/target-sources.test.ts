import { expect, it } from 'vitest';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';
import { columnsToRead } from '../../../src/documents/columns-to-read.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { quarterlyDocument } from '../../../src/reports/quarterly/document/build-document.js';
import { FiguresTable } from '../../../src/web/report/figures-table.js';
import { tablesIn } from '../../support/counts-in-document.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

const [PLAN, AGREED] = ['The plan of the service', 'Agreed with the commissioner'];

const report = buildQuarterlyReport({
  ...WORKED_INPUT,
  settings: {
    ...DEFAULT_TEAM_SETTINGS,
    targets: {
      'assessed-of-referred': { percent: 80, source: PLAN },
      'completed-of-assessed': { percent: 70, source: AGREED },
      uptake: { percent: 60, source: PLAN },
    },
  },
});
const table = tablesIn(quarterlyDocument(report)).find(({ caption }) =>
  caption.startsWith('Indicators of the referral cohort'),
);
if (table === undefined) throw new Error('There is no such table.');
const placeOf = (name: string): number => table.columns.findIndex(({ head }) => head === name);

it('says each source of a target once where people read, and by a mark which target is whose', async () => {
  const markedTargets = table.rows.map((cells) => cells[placeOf('Target, %')]?.text);
  expect(markedTargets.filter((text) => text !== 'n/a')).toEqual(['80.0 (a)', '70.0 (b)', '60.0 (a)']);
  const page = await FiguresTable({ table, addressOf: () => '/' });
  expect(page.split(PLAN)).toHaveLength(2);
  expect(page.split(AGREED)).toHaveLength(2);
  expect(page).toContain(`Target (a): ${PLAN}. Target (b): ${AGREED}. n/a: does not apply`);
});

it('says it in every row of a sheet, beside a target that is a number alone', () => {
  const source = placeOf('Source of the target');
  expect(columnsToRead(table)).not.toContain(source);
  const sources = table.rows.map((cells) => cells[source]?.text).filter((text) => text !== '');
  expect(sources).toEqual([PLAN, AGREED, PLAN]);
  const targets = table.rows.flatMap((cells) => {
    const cell = cells[placeOf('Target, %')];
    return cell?.kind === 'number' && cell.value !== null ? [cell.value] : [];
  });
  expect(targets).toEqual([80, 70, 60]);
});
