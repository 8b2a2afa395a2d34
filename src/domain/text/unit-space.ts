/**
 * What stands between a number and its unit: a space at which no line breaks. In the typeface of the pages a plain space
 * is a fifth of an em, as a thin space should be; its own thin space is half of that and looks like none.
 */
export const UNIT_SPACE = '\u00a0';
