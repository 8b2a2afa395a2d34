export type Drawn = Readonly<Record<string, string>>;

/** Elements of a drawing by name, with their attributes, in the order in which they were drawn. */
export function drawnElements(svg: string, name: string): readonly Drawn[] {
  return [...svg.matchAll(new RegExp(`<${name}((?: [\\w-]+="[^"]*")*)/?>`, 'g'))].map(([, attributes = '']) =>
    Object.fromEntries(
      [...attributes.matchAll(/ ([\w-]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, value]),
    ),
  );
}

/** A number of an element. */
export function numberAt(drawn: Drawn | undefined, key: string): number {
  const value = Number(drawn?.[key]);
  if (!Number.isFinite(value)) throw new Error(`No number ${key} in ${JSON.stringify(drawn)}.`);
  return value;
}

/** The texts of a drawing with the place at which they stand. */
export function drawnTexts(
  svg: string,
): readonly { readonly text: string; readonly x: number; readonly y: number }[] {
  return [...svg.matchAll(/<text x="([^"]*)" y="([^"]*)"[^>]*>([^<]*)<\/text>/g)].map(
    ([, x = '', y = '', text = '']) => ({ text, x: Number(x), y: Number(y) }),
  );
}

/** The place of the only text that reads so. */
export function placeOf(svg: string, text: string): { readonly x: number; readonly y: number } {
  const [found, ...more] = drawnTexts(svg).filter((each) => each.text === text);
  if (found === undefined || more.length > 0) throw new Error(`"${text}" does not stand there once.`);
  return found;
}
