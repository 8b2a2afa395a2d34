import { z } from 'zod';
import { evidenceMark } from '../../domain/evidence/citation.js';
import type { Citation } from '../../domain/evidence/citation.js';

export const CitationShown = z
  .strictObject({
    id: z.string(),
    text: z.string(),
    doi: z.string().nullable(),
    status: z.string(),
    mark: z.string().nullable().describe('Stands wherever the figure is shown whose source was not read'),
  })
  .meta({ id: 'Citation' });

/** A source as clients are shown it, with its mark. */
export function presentCitation(citation: Citation): z.output<typeof CitationShown> {
  const { id, text, doi, status } = citation;
  return { id, text, doi, status, mark: evidenceMark(status) };
}
