/** A person's name as lists and heads show it. */
export interface Named {
  readonly familyName: string;
  readonly givenName: string;
}

/** Family name first, for lists. Each name keeps its own direction of writing. */
export function PersonName({ person }: { readonly person: Named }): JSX.Element {
  return (
    <span class="name">
      <bdi safe>{person.familyName}</bdi>, <bdi safe>{person.givenName}</bdi>
    </span>
  );
}

/** The name as it is spoken, for labels and titles. */
export function spokenName({ givenName, familyName }: Named): string {
  return `${givenName} ${familyName}`;
}
