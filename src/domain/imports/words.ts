/** A heading, a name or a word in the form in which two are compared: small letters, figures, single spaces. */
export function wordKey(text: string): string {
  return text
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}%?+]+/gu, ' ')
    .trim();
}

/** The same without any space, for headings such as "D.O.B." and "DOB". */
export function tightKey(text: string): string {
  return wordKey(text).replaceAll(' ', '');
}
