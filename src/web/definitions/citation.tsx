import { evidenceMark } from '../../domain/evidence/citation.js';
import type { Citation as CitationOf, EvidenceStatus } from '../../domain/evidence/citation.js';
import { Tag } from '../components/parts.js';

/** A source, with the mark that says how well it is known. */
export function Citation({ citation }: { readonly citation: CitationOf }): JSX.Element {
  const { id, text, doi, status } = citation;
  return (
    <span>
      <a href={`/definitions/sources#source-${id}`} safe>
        {text}
      </a>
      {doi === null ? '' : <span class="muted" safe>{`, doi ${doi}`}</span>} <StatusMark status={status} />
    </span>
  );
}

/** The mark of a source that was not read; nothing where it was. */
export function StatusMark({ status }: { readonly status: EvidenceStatus }): JSX.Element {
  const mark = evidenceMark(status);
  if (mark === null) return '';
  return <Tag kind={status.endsWith('from-memory') ? 'check' : 'plain'} label={mark} />;
}
