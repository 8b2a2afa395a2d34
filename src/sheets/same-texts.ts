/** Different texts that are kept in memory once; of longer ones hardly any comes twice. */
const MOST_SAME_TEXTS = 50_000;
const LONGEST_SAME_CHARACTERS = 40;

/** Gives for each text the same one in memory: the columns of a sheet hold the same few words in every row. */
export function sameTexts(): (text: string) => string {
  const texts = new Map<string, string>();
  return (text) => {
    if (text.length > LONGEST_SAME_CHARACTERS) return text;
    const known = texts.get(text);
    if (known !== undefined) return known;
    if (texts.size < MOST_SAME_TEXTS) texts.set(text, text);
    return text;
  };
}
