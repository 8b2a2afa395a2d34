import type { Document, Section } from '../../../documents/document-model.js';
import { britishDate } from '../../../domain/calendar/british-date.js';
import { periodWords } from '../../../domain/calendar/period-words.js';
import type { QuarterlyReport } from '../report-model.js';
import { coverWords } from '../text-numbers.js';
import { breakdownsSection } from './breakdowns.js';
import { completionSection } from './completion.js';
import { dataQualitySection } from './data-quality.js';
import { definitionsSection } from './definitions.js';
import { funnelSection } from './funnel.js';
import { withMarksExplained } from './marks.js';
import { indicatorsSection } from './indicators.js';
import { outcomesSection } from './outcomes.js';
import { comparisonsSection } from './comparisons.js';
import { predictedSection } from './predicted.js';
import { sitesSection } from './sites.js';
import { summarySection } from './summary.js';
import { trendSections } from './trend.js';
import { waitingSection } from './waiting.js';

/** The quarterly report laid out in sections, tables and plots, from which the page, the PDF and the spreadsheet are made. */
export function quarterlyDocument(report: QuarterlyReport): Document {
  const { teamName, period, asAt, provisional, narrowedTo } = report;
  const notes = [...(provisional.isPeriodOver ? [] : ['the period is not over']), ...provisional.notes];
  return {
    title: `${teamName}: ${periodWords(period)}`,
    subtitle: [
      coverWords(period, asAt),
      provisional.isProvisional
        ? `Provisional: ${notes.join('; ')}.`
        : 'Every referral received, started or discharged in the period is closed.',
      ...(narrowedTo.length === 0 ? [] : [`Narrowed to ${narrowedTo.map(({ words }) => words).join('; ')}.`]),
    ],
    footer: [
      `${teamName}, ${periodWords(period)}. Data cut ${britishDate(asAt)}`,
      ...(provisional.isProvisional ? ['provisional'] : []),
      ...(narrowedTo.length === 0 ? [] : ['narrowed']),
    ].join(', '),
    sections: sections(report).map(withMarksExplained),
  };
}

function sections(report: QuarterlyReport): readonly Section[] {
  return [
    summarySection(report),
    funnelSection(report),
    waitingSection(report),
    completionSection(report),
    outcomesSection(report),
    predictedSection(report),
    indicatorsSection(report),
    ...comparisonsSection(report),
    ...trendSections(report),
    breakdownsSection(report),
    sitesSection(report),
    dataQualitySection(report),
    definitionsSection(report),
  ];
}
