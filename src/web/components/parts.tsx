import type { PropsWithChildren } from '@kitajs/html';
import { attributeText } from './field.js';

type FigureProps = PropsWithChildren<{
  /** What is plotted, or what was found where the rule allows to say so. */
  readonly title: string;
  /** The drawing: an `svg` with a text alternative that gives its numbers. */
  readonly plot: JSX.Element;
}>;

/** A drawing with its table, which is given as children: side by side on a desk where both fit, else the drawing first. */
export function Figure({ title, plot, children }: FigureProps): JSX.Element {
  return (
    <figure>
      <figcaption safe>{title}</figcaption>
      <div class="halves">
        <div class="plot">{plot}</div>
        {children}
      </div>
    </figure>
  );
}

/** What stands where a list has nothing: one friendly sentence, and where it helps a way on. */
export function EmptyState({ children }: PropsWithChildren): JSX.Element {
  return (
    <div class="empty">
      <p>{children}</p>
    </div>
  );
}

type TagProps = { readonly kind?: 'plain' | 'good' | 'check' | 'warning'; readonly label: string };

/** A short mark in words, such as "provisional". */
export function Tag({ kind = 'plain', label }: TagProps): JSX.Element {
  return (
    <span class={kind === 'plain' ? 'tag' : `tag ${kind}`} safe>
      {label}
    </span>
  );
}

/** A link that looks like a button, for going somewhere; what changes the record is a `Button` in a form. */
export function ButtonLink({
  href,
  kind = 'plain',
  children,
}: PropsWithChildren<{ readonly href: string; readonly kind?: 'primary' | 'plain' }>): JSX.Element {
  return (
    <a class={kind === 'primary' ? 'button primary' : 'button'} href={attributeText(href)}>
      {children}
    </a>
  );
}

interface PagerProps {
  /** Address of the first page; null on it. */
  readonly first: string | null;
  /** Address of the next page; null on the last. */
  readonly next: string | null;
  /** What is paged through, such as `entries`. */
  readonly what: string;
}

/** Moves through a long list page by page. Nothing where one page holds it all. */
export function Pager({ first, next, what }: PagerProps): JSX.Element {
  if (first === null && next === null) return '';
  return (
    <nav class="pager" aria-label={`More ${what}`}>
      {first === null ? '' : <a href={attributeText(first)} safe>{`Back to the first ${what}`}</a>}
      {next === null ? '' : <a href={attributeText(next)} safe>{`Further ${what}`}</a>}
    </nav>
  );
}
