import type { AgeForm, DateForm } from './analysis-request.js';
import type { AnalysisTable } from './analysis-table.js';
import { notDoneTable, offerTable, resultTable, sessionTable } from './part-tables.js';
import { referralTable } from './referral-table.js';

/** The tables for analysis: closed sets, numbers, pseudonyms, and dates or months; nothing that anybody typed as text. */
export function analysisTables(dates: DateForm, ages: AgeForm): readonly AnalysisTable[] {
  return [
    referralTable(dates, ages),
    offerTable(dates),
    resultTable(dates),
    notDoneTable(dates),
    sessionTable(dates),
  ];
}
