/** An equation as one names it: by its authors and its year. @example equationName('enright-sherrill-1998') -> 'Enright Sherrill 1998' */
export function equationName(equationId: string): string {
  return equationId
    .split('-')
    .map((part) => part.charAt(0).toUpperCase() + part.slice(1))
    .join(' ');
}
