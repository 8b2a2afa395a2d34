import type { Section } from '../../../documents/document-model.js';
import { COHORT_KINDS } from '../../../domain/cohort/cohorts.js';
import type { QuarterlyReport } from '../report-model.js';
import { count, figureLink, interval, membersLink, percentage, text, withTrueMinus } from './cells.js';

/** The sentences on top, and the three cohorts. */
export function summarySection({ narrative, cohorts }: QuarterlyReport): Section {
  return {
    id: 'summary',
    title: 'What the period shows',
    sheetName: 'Summary',
    blocks: [
      {
        kind: 'sentences',
        items: narrative.map(({ text: sentence, figureIds }) => ({
          text: withTrueMinus(sentence).replaceAll(/(?<=\d) %/g, '\u00a0%'),
          links: figureIds.map((figureId, index) => ({
            words: figureIds.length === 1 ? 'who is behind it' : `figure ${index + 1}`,
            to: figureLink(figureId),
          })),
        })),
      },
      {
        kind: 'table',
        table: {
          caption:
            'The three cohorts, never mixed in one percentage; those registered in error are left out of every figure',
          columns: [
            { head: 'Cohort', kind: 'text' },
            { head: 'Who belongs to it', kind: 'text' },
            { head: 'Referrals', kind: 'number' },
            { head: 'People', kind: 'number' },
            { head: 'Still open', kind: 'number' },
            { head: 'Left out: registered in error', kind: 'number' },
            { head: 'Still open, %', kind: 'number', isForSheetsOnly: true },
            { head: '95 % interval', kind: 'interval', isForSheetsOnly: true },
          ],
          rows: COHORT_KINDS.map((kind) => {
            const { words, referrals, people, registeredInError, notClosed } = cohorts[kind];
            return [
              text(`${kind} cohort`),
              text(words),
              count(referrals, membersLink(notClosed.id, 'counted')),
              count(people, membersLink(notClosed.id, 'counted')),
              count(notClosed.numerator, figureLink(notClosed.id)),
              count(registeredInError, membersLink(notClosed.id, 'excluded')),
              percentage(notClosed),
              interval(notClosed.interval, 1),
            ];
          }),
        },
      },
    ],
  };
}
