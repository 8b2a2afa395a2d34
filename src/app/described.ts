const BEFORE_NAME = '#/components/schemas/';
/** What the description appends to the name of a schema where it is of what comes in. */
const COMES_IN = 'Input';

type Schemas = Readonly<Record<string, unknown>>;

/** A description of the service: its operations, and the schemas that they refer to by names. */
export interface Described {
  readonly paths: unknown;
  readonly schemas: Schemas;
}

/**
 * Leaves of the schemas those that operations lead to, in the order of their names. Each schema is described twice, as it
 * comes in and as it goes out; where one of the two is never used, the other has the plain name.
 *
 * The order would else be that in which the program's files happened to be read in.
 *
 * @example schemas NewOffer (never used) and NewOfferInput -> NewOffer, with what NewOfferInput said
 */
export function tidySchemas({ paths, schemas }: Described): Described {
  const used = usedIn(paths, schemas);
  const nameOf = (name: string): string => {
    const plain = name.endsWith(COMES_IN) ? name.slice(0, -COMES_IN.length) : name;
    return used.has(plain) ? name : plain;
  };
  const renamed = (value: unknown): unknown => withReferences(value, nameOf);
  const kept = [...used].map((name) => [nameOf(name), renamed(schemas[name])] as const);
  kept.sort(([one], [other]) => (one < other ? -1 : 1));
  return { paths: renamed(paths), schemas: Object.fromEntries(kept) };
}

/** What the framework writes of an answer that its route says nothing of. */
const NOTHING_SAID = 'Default Response';

/**
 * Says of each answer that is described by its schema alone what it is.
 *
 * @param paths operations by path and method
 */
export function withAnswersNamed(paths: unknown): unknown {
  if (Array.isArray(paths)) return paths.map(withAnswersNamed);
  if (typeof paths !== 'object' || paths === null) return paths;
  return Object.fromEntries(
    Object.entries(paths).map(([key, each]: [string, unknown]) => [
      key,
      isUnnamed(each) ? { ...each, description: WORDS[key] ?? 'The answer.' } : withAnswersNamed(each),
    ]),
  );
}

const WORDS: Readonly<Record<string, string>> = {
  200: 'What was asked for, as it now stands.',
  201: 'It is stored, as it stands here.',
  503: 'The service is not ready for work.',
};

function isUnnamed(each: unknown): each is object {
  return (
    typeof each === 'object' && each !== null && 'description' in each && each.description === NOTHING_SAID
  );
}

/** Names of the schemas that something refers to, itself or by another. */
function usedIn(start: unknown, schemas: Schemas): ReadonlySet<string> {
  const used = new Set<string>();
  const waiting = [start];
  while (waiting.length > 0) {
    withReferences(waiting.pop(), (name) => {
      if (!used.has(name)) waiting.push(schemas[name]);
      used.add(name);
      return name;
    });
  }
  return used;
}

/** A copy in which every reference has the name that it is given. */
function withReferences(value: unknown, nameOf: (name: string) => string): unknown {
  if (Array.isArray(value)) return value.map((each) => withReferences(each, nameOf));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, each]: [string, unknown]) => [
      key,
      key === '$ref' && typeof each === 'string' && each.startsWith(BEFORE_NAME)
        ? BEFORE_NAME + nameOf(each.slice(BEFORE_NAME.length))
        : withReferences(each, nameOf),
    ]),
  );
}
