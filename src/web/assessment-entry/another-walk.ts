import { WALK_TESTS } from '../../domain/measures/registered.js';
import { readForm, textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { ANOTHER_WALK, ENDURANCE_TEST, MORE_WALKS } from './field-names.js';
import type { MoreWalk } from './field-names.js';
import { isBegun } from './sheet-state.js';

/** Whether a form was sent by the button that asks for one more walk: what is wrong elsewhere is not said then. */
export function isAskingForWalk(body: unknown): boolean {
  return textOf(readForm(body), ANOTHER_WALK) !== '';
}

/** The form of a sheet, with room for one more walk where it is asked for. */
export function readSheet(body: unknown): FormValues {
  return isAskingForWalk(body) ? withAnotherWalk(readForm(body)) : readForm(body);
}

/** The next place for a further walk; null where all are taken. */
export function freeWalk(form: FormValues): MoreWalk | null {
  return MORE_WALKS.find((walk) => !isBegun(form, walk)) ?? null;
}

/**
 * A form with room for one more walk, as a walk that the form does not have yet: the second of a further test that has a first,
 * else the first of another test; where the first walk was. It is no walk of the assessment before it has a result or a reason.
 *
 * @returns the form as it is where there is no place left
 */
function withAnotherWalk(form: FormValues): FormValues {
  const walk = freeWalk(form);
  if (walk === null) return form;
  const { test, attempt } = likelyNext(form);
  return new Map([
    ...form,
    [`${walk}.test`, [test]],
    [`${walk}.attempt`, [String(attempt)]],
    [`${walk}.place`, [textOf(form, 'place')]],
  ]);
}

interface WalkOfTest {
  readonly test: string;
  readonly attempt: 1 | 2;
}

function likelyNext(form: FormValues): WalkOfTest {
  const further = MORE_WALKS.map((walk) => [textOf(form, `${walk}.test`), textOf(form, `${walk}.attempt`)]);
  const hasFurther = (test: string, attempt: string): boolean =>
    further.some(([ofTest, number]) => ofTest === test && number === attempt);
  const second = WALK_TESTS.find(({ id }) => hasFurther(id, '1') && !hasFurther(id, '2'));
  if (second !== undefined) return { test: second.id, attempt: 2 };
  const hasPlaceOfItsOwn = [textOf(form, 'walkTest'), ENDURANCE_TEST];
  const first = WALK_TESTS.find(({ id }) => !hasPlaceOfItsOwn.includes(id) && !hasFurther(id, '1'));
  return first === undefined ? { test: ENDURANCE_TEST, attempt: 2 } : { test: first.id, attempt: 1 };
}
