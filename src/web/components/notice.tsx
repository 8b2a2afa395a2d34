import type { PropsWithChildren } from '@kitajs/html';

/** What a notice is about: something to know, something done, something to check, something to heed. */
export type NoticeKind = 'plain' | 'done' | 'check' | 'warning';

const WORDS: Readonly<Record<NoticeKind, string>> = {
  plain: 'Note',
  done: 'Done',
  check: 'Please check',
  warning: 'Caution',
};

type NoticeProps = PropsWithChildren<{
  readonly kind: NoticeKind;
  /** Stands for the word of the kind, where it says more. */
  readonly title?: string;
  /** Told by a screen reader as soon as the page is there. */
  readonly isLive?: boolean;
}>;

/** A notice: a shape and a word tell its kind, the colour repeats it. */
export function Notice({ kind, title, isLive = false, children }: NoticeProps): JSX.Element {
  return (
    <div class={`notice ${kind}`} role={isLive ? 'status' : undefined}>
      <NoticeShape kind={kind} />
      <div>
        <p class="title" safe>
          {title ?? WORDS[kind]}
        </p>
        {children}
      </div>
    </div>
  );
}

/** The shape of a kind: a circle, a tick, a diamond, a triangle. */
export function NoticeShape({ kind }: { readonly kind: NoticeKind }): JSX.Element {
  return (
    <svg viewBox="0 0 24 24" fill="none" stroke="currentColor" stroke-width="2" aria-hidden="true">
      <path d={SHAPES[kind]} />
    </svg>
  );
}

const SHAPES: Readonly<Record<NoticeKind, string>> = {
  plain: 'M12 3a9 9 0 1 1 0 18a9 9 0 1 1 0-18M12 11v6M12 7v1.500',
  done: 'M4 13l5 5L20 6',
  check: 'M12 2l10 10l-10 10l-10-10zM12 7v6M12 15.500v1.500',
  warning: 'M12 3l10 18h-20zM12 9v6M12 17v1.500',
};
