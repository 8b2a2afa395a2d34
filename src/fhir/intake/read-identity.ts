import { NHS_NUMBER_SYSTEM, PRACTICE_SYSTEM } from '../vocabulary.js';
import { acceptedLine, needed, notTaken } from './fields.js';
import type { Gathered } from './fields.js';
import type { OpenElement } from './reading.js';

const LONGEST_NAME = 100;
const LONGEST_NUMBER = 20;
const PRACTICE_CODE = /^[A-Z0-9]{3,12}$/;

/** Uses of a name by which the person is known now, the surest first. */
const NAME_USES: readonly (string | null)[] = ['official', 'usual', null];

/** The name by which the person is known; names of other uses are not kept. */
export function readName(
  patient: OpenElement,
  gathered: Gathered,
): { readonly familyName: string | null; readonly givenName: string | null } {
  const names = patient.parts('name').map((element) => ({ element, use: element.text('use') }));
  const [chosen] = NAME_USES.flatMap((use) => names.filter((name) => name.use === use));
  for (const name of names) if (name !== chosen) name.element.leave('Another name of the person is read.');
  if (chosen === undefined) {
    needed(gathered, patient.at('name'), 'Give a name, with use official or usual or none.');
    return { familyName: null, givenName: null };
  }
  const { element } = chosen;
  const family = element.text('family');
  const givens = element.texts('given');
  if (family === null) needed(gathered, element.at('family'), 'Give the family name.');
  if (!element.has('given')) needed(gathered, element.at('given'), 'Give a given name.');
  const given = { value: givens.join(' '), pointer: element.at('given'), maxLength: LONGEST_NAME };
  return {
    familyName:
      family === null
        ? null
        : acceptedLine(gathered, { value: family, pointer: element.at('family'), maxLength: LONGEST_NAME }),
    givenName: givens.length === 0 ? null : acceptedLine(gathered, given),
  };
}

/** The NHS number as it was sent: whether it can be one is for the rules of the record. Other identifiers are not kept. */
export function readNhsNumber(patient: OpenElement, gathered: Gathered): string | null {
  gathered.places.set('/patient/nhsNumber', patient.at('identifier'));
  let number: string | null = null;
  for (const identifier of patient.parts('identifier')) {
    const use = identifier.text('use');
    const value = identifier.text('value');
    const isInUse = use === null || use === 'official' || use === 'usual';
    if (identifier.text('system') !== NHS_NUMBER_SYSTEM || !isInUse) {
      identifier.leave();
    } else if (number !== null) {
      notTaken(gathered, identifier.pointer, 'A person has one NHS number.');
    } else if (value === null || value.length > LONGEST_NUMBER) {
      notTaken(gathered, identifier.at('value'), 'Give the ten digits of the NHS number.');
    } else {
      gathered.places.set('/patient/nhsNumber', identifier.at('value'));
      number = value;
    }
  }
  return number;
}

/** The code of the practice of the person; any other practitioner is not kept. */
export function readPractice(patient: OpenElement, gathered: Gathered): string | null {
  let code: string | null = null;
  for (const practice of patient.parts('generalPractitioner')) {
    const identifier = practice.part('identifier');
    const value = identifier?.text('value') ?? null;
    if (
      identifier === null ||
      identifier.text('system') !== PRACTICE_SYSTEM ||
      value === null ||
      code !== null
    ) {
      practice.leave();
    } else if (PRACTICE_CODE.test(value)) {
      practice.sameAs('type', ['Organization']);
      practice.label('display');
      code = value;
    } else {
      notTaken(gathered, identifier.at('value'), 'A practice code has 3 to 12 capital letters and digits.');
    }
  }
  return code;
}
