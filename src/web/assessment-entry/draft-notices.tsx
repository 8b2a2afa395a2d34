import { londonTime } from '../../domain/calendar/london-time.js';
import type { Refusal } from '../../domain/refusal/refusal.js';
import { Notice } from '../components/notice.js';

/** Something to be said above the form. */
export interface SheetNotice {
  readonly kind: 'plain' | 'done' | 'warning';
  readonly title: string;
  readonly text: string;
  /** Where the notice leads on to. */
  readonly link?: { readonly href: string; readonly words: string };
}

/** A draft that changed since the page was made. */
export type StaleDraft = Extract<Refusal, { readonly code: 'stale-draft' }>;

export const DRAFT_SAVED: SheetNotice = {
  kind: 'done',
  title: 'The draft is saved',
  text: 'It is found again on any device. Nothing counts until it is recorded.',
};

/** Says who went on with a draft, and how; what was typed on this page is kept on it. */
export function staleNotice({ state, saved }: StaleDraft): SheetNotice {
  const who = saved === null ? 'Somebody' : `${saved.byName}, ${londonTime(saved.at)},`;
  return {
    kind: 'warning',
    title: 'This assessment has moved on elsewhere',
    text: `${who} ${WHAT_THEY_DID[state]}. What you typed is on this page and is not saved. To see what is saved, open the page anew; to go on with yours in its place, save or record it from here.`,
  };
}

const WHAT_THEY_DID = {
  none: 'changed this draft',
  open: 'saved this draft on another page or device',
  recorded: 'recorded this assessment',
  discarded: 'threw this draft away',
} as const;

export function SheetNoticeView({ notice }: { readonly notice: SheetNotice | null }): JSX.Element {
  if (notice === null) return '';
  return (
    <Notice kind={notice.kind} title={notice.title} isLive>
      <p safe>{notice.text}</p>
      {notice.link === undefined ? (
        ''
      ) : (
        <p>
          <a href={notice.link.href} safe>
            {notice.link.words}
          </a>
        </p>
      )}
    </Notice>
  );
}
