import type { PhysicalTestEntry } from '../../domain/assessment/assessment.js';
import type { PhysicalTest } from '../../domain/measures/physical-test.js';
import { PHYSICAL_TESTS } from '../../domain/measures/registered.js';
import { NOT_DONE_REASONS, TEST_PLACES } from '../../domain/referral/closed-sets.js';
import { isTicked, textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { conditionField, notDoneField, partField, unableField, valueField } from './field-names.js';
import type { Reading } from './read-tests.js';
import { placeOf } from './walk-conditions.js';

/** Every field that makes a physical test a part of the assessment: what was the case during it alone does not. */
export function fieldsOfPhysicalTest({ id, parts, measures }: PhysicalTest): readonly string[] {
  return [
    ...parts.flatMap((part) => [partField(id, part.id), unableField(id, part.id)]),
    ...measures.map((measure) => valueField(id, measure.id)),
    notDoneField(`p.${id}`),
  ];
}

/** The physical tests of which something was typed, in the order of the catalogue. */
export function physicalTestsIn(form: FormValues): readonly PhysicalTest[] {
  return PHYSICAL_TESTS.filter((test) =>
    fieldsOfPhysicalTest(test).some((field) => textOf(form, field) !== ''),
  );
}

/** Reads one physical test: its parts, or a result as it was typed, or why it was not done. */
export function physicalTest(test: PhysicalTest, reading: Reading): PhysicalTestEntry {
  const { form, reader } = reading;
  const parts = Object.fromEntries(
    test.parts.flatMap(({ id }): readonly (readonly [string, number | 'unable'])[] => {
      const result = partOf(test.id, id, reading);
      return result === null ? [] : [[id, result]];
    }),
  );
  const conditions = Object.fromEntries(
    test.conditions.flatMap(({ id, values }): readonly (readonly [string, string])[] => {
      const value = reader.optionalChoice(conditionField(test.id, id), values);
      return value === null ? [] : [[id, value]];
    }),
  );
  return {
    test: test.id,
    place: reader.optionalChoice(placeOf(form, `p.${test.id}`), TEST_PLACES) ?? 'course',
    conditions,
    parts: Object.keys(parts).length === 0 ? null : parts,
    ...typedResult(test, reading),
    notDoneReason: reader.optionalChoice(notDoneField(`p.${test.id}`), NOT_DONE_REASONS),
  };
}

function partOf(testId: string, partId: string, { form, number, errors }: Reading): number | 'unable' | null {
  const field = partField(testId, partId);
  const seconds = number(field);
  if (!isTicked(form, unableField(testId, partId))) return seconds;
  if (textOf(form, field) !== '') {
    errors.push({ field, message: 'Give the time, or tick unable: not both.' });
  }
  return 'unable';
}

function typedResult(
  test: PhysicalTest,
  { number, errors }: Reading,
): Pick<PhysicalTestEntry, 'measure' | 'value'> {
  const typed = test.measures.flatMap((measure) => {
    const value = number(valueField(test.id, measure.id));
    return value === null ? [] : [{ measure: measure.id, value }];
  });
  const [first, second] = typed;
  if (second !== undefined) {
    const units = test.measures.map(({ unit }) => unit).join(' or ');
    const message = `Give one result, in ${units}: one is not worked out from the other.`;
    errors.push({ field: valueField(test.id, second.measure), message });
  }
  return first ?? { measure: null, value: null };
}
