import { nhsNumbersOfTestRange } from '../../seeds/nhs-numbers.js';

const HEADINGS = [
  'NHS number',
  'Surname',
  'Forename',
  'DOB',
  'Sex',
  'Site',
  'Received',
  'Source',
  'Diagnosis',
  'Triage date',
  'Start date',
  'Attended',
  'Baseline assessment',
  'Baseline 6MWT (m)',
  'Baseline CAT',
  'Discharge assessment',
  'Discharge 6MWT (m)',
  'Discharge CAT',
  'Closed',
  'Outcome',
] as const;

/** A sheet as a team keeps it, one row a referral with its whole course; no two people are the same. */
export function benchSheet(rows: number): string {
  const nextNumber = nhsNumbersOfTestRange(1);
  const lines: string[] = [HEADINGS.join(',')];
  for (let row = 0; row < rows; row += 1) {
    lines.push(
      [
        nextNumber(),
        `Dunlin${row}`,
        'Sandy',
        `${two(1 + (row % 28))}/${two(1 + (row % 12))}/${1935 + (row % 30)}`,
        row % 2 === 0 ? 'F' : 'M',
        'Dune Hall',
        `13/0${1 + (row % 3)}/2026`,
        'GP',
        'COPD',
        '20/03/2026',
        '20/04/2026',
        8 + (row % 5),
        '15/04/2026',
        200 + (row % 200),
        10 + (row % 20),
        '15/06/2026',
        230 + (row % 200),
        8 + (row % 20),
        '19/06/2026',
        'completed',
      ].join(','),
    );
  }
  return lines.join('\r\n');
}

/** The people and referrals of a sheet of measurements, and nothing measured yet. */
export function benchPeople(referrals: number): string {
  const nextNumber = nhsNumbersOfTestRange(1);
  const lines = ['NHS number,Surname,Forename,DOB,Site,Received,Diagnosis,Triage date'];
  for (let person = 0; person < referrals; person += 1) {
    lines.push(`${nextNumber()},Dunlin${person},Sandy,13/05/1950,Dune Hall,13/03/2026,COPD,20/03/2026`);
  }
  return lines.join('\r\n');
}

/** What is measured at each of two assessments: the words of the sheet, and the value at the first and at the second. */
const MEASURED: readonly (readonly [measure: string, attempt: string, first: number, second: number])[] = [
  ['6MWD', '1', 280, 310],
  ['6MWD', '2', 300, 340],
  ['CAT', '', 22, 18],
  ['HADS-A', '', 9, 7],
  ['HADS-D', '', 8, 6],
  ['MRC', '', 4, 3],
  ['PHQ-9', '', 9, 6],
  ['GAD-7', '', 7, 5],
  ['1-min STS', '', 15, 19],
  ['EQ VAS', '', 55, 65],
];

/** Rows of a sheet with one measurement each, that one referral has. */
export const ROWS_A_REFERRAL = 2 * MEASURED.length;

/** A sheet of measurements of those people, one a row. */
export function benchMeasurements(referrals: number): string {
  const nextNumber = nhsNumbersOfTestRange(1);
  const lines = ['NHS number,Received,Timepoint,Measured on,Measure,Attempt,Value'];
  for (let person = 0; person < referrals; person += 1) {
    const ofReferral = `${nextNumber()},13/03/2026`;
    for (const [measure, attempt, first, second] of MEASURED) {
      lines.push(`${ofReferral},baseline,15/04/2026,${measure},${attempt},${first}`);
      lines.push(`${ofReferral},discharge,15/06/2026,${measure},${attempt},${second}`);
    }
  }
  return lines.join('\r\n');
}

function two(number: number): string {
  return String(number).padStart(2, '0');
}
