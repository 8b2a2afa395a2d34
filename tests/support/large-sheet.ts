import { nhsNumbersOfTestRange } from '../../seeds/nhs-numbers.js';

const HEADINGS = 'NHS number,Surname,Forename,DOB,Site,Received,Diagnosis,Triage date';

/** A sheet of so many referrals that it is brought in by slices, each of somebody else; always the same. */
export function largeSheet(referrals: number): string {
  const nextNumber = nhsNumbersOfTestRange(1);
  const rows = Array.from(
    { length: referrals },
    (_, row) => `${nextNumber()},Dunlin${row},Sandy,13/05/1950,Dune Hall,13/04/2026,COPD,20/04/2026`,
  );
  return [HEADINGS, ...rows].join('\n');
}

/** NHS number of the person in the last row of such a sheet. */
export function lastNhsNumber(referrals: number): string {
  const nextNumber = nhsNumbersOfTestRange(1);
  let number = nextNumber();
  for (let row = 1; row < referrals; row += 1) number = nextNumber();
  return number;
}
