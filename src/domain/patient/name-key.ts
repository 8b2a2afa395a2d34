/**
 * A name as it is searched by: without accents and in lower case, so that "Ångström" is found by "angs".
 *
 * @param name any script; marks that stand on a letter are left out, letters stay
 * @example nameKey('Ångström') -> 'angstrom'
 */
export function nameKey(name: string): string {
  const lower = name.normalize('NFKD').toLowerCase();
  const letters = lower.replace(/\p{M}/gu, '');
  return letters === '' ? lower : letters;
}
