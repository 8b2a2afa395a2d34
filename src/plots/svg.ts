/** Attributes of an element; numbers are rounded to tenths of a pixel. */
export type Attributes = Readonly<Record<string, string | number>>;

/** A drawing with what stands in its place for those who do not see it. */
export interface Plot {
  /** The whole `svg` element. It has no style of its own: a page's style sheet may colour it by its classes. */
  readonly svg: string;
  /** Its numbers in words. */
  readonly alternative: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** What every drawing is given. */
export interface PlotFrame {
  /** Begins the ids within the drawing; no other drawing of the same page may have it. */
  readonly id: string;
  readonly title: string;
}

/**
 * Width of a drawing; its height follows from what is drawn. A phone of 360 px has 328 px for it, which leaves its text of 13 px
 * above 12.
 */
export const PLOT_WIDTH_PX = 340;
/** Decimal places of the lines of a drawing, as `inTenths`. */
export const PATH_DIGITS = 1;
const TEXT_SIZE_PX = 13;

/**
 * An element with its children, which must be markup already.
 *
 * @example element('g', { x: 1.04 }, 'a') -> '<g x="1">a</g>'
 */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${attributeOf(value)}"`);
  const content = children.join('');
  return content === ''
    ? `<${name}${written.join('')}/>`
    : `<${name}${written.join('')}>${content}</${name}>`;
}

/** A line of text at a place. */
export function textAt(x: number, y: number, content: string, attributes: Attributes = {}): string {
  return element('text', { x, y, ...attributes }, escaped(content));
}

/** The drawing as a whole: a picture with a title and its numbers in words. */
export function drawing(
  { id, title }: PlotFrame,
  heightPx: number,
  alternative: string,
  parts: readonly string[],
): Plot {
  const svg = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${PLOT_WIDTH_PX} ${heightPx}`,
      width: PLOT_WIDTH_PX,
      height: heightPx,
      role: 'img',
      'aria-labelledby': `${id}-title`,
      'aria-describedby': `${id}-desc`,
      'font-family': 'Source Sans 3',
      'font-size': TEXT_SIZE_PX,
    },
    element('title', { id: `${id}-title` }, escaped(title)),
    element('desc', { id: `${id}-desc` }, escaped(alternative)),
    ...parts,
  );
  return { svg, alternative, widthPx: PLOT_WIDTH_PX, heightPx };
}

/** A text as markup. @example escaped('a < b & "c"') -> 'a &lt; b &amp; &quot;c&quot;' */
export function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

function attributeOf(value: string | number): string {
  return typeof value === 'number' ? String(inTenths(value)) : escaped(value);
}

/** A length in a drawing: less than a tenth of a pixel cannot be seen. @example inTenths(1.04) -> 1 */
export function inTenths(px: number): number {
  return Math.round(px * 10) / 10;
}
