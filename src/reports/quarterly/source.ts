import type { Citation } from '../../domain/evidence/citation.js';
import { evidenceMark } from '../../domain/evidence/citation.js';
import type { Source } from './definitions-model.js';

/** A citation as the report prints it, with the mark that must stand beside the figure. */
export function sourceOf(citation: Citation): Source {
  const { text, doi, status } = citation;
  return { text, doi, status, mark: evidenceMark(status) };
}
