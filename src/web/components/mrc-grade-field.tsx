import { Select } from './choices.js';
import type { FieldProps } from './field.js';

interface MrcGradeFieldProps extends FieldProps {
  readonly value: string;
  /** What is chosen where no grade is known. */
  readonly none: string;
}

const GRADES = ['1', '2', '3', '4', '5'].map((grade) => ({ value: grade, label: grade }));

/** A grade of breathlessness of the MRC scale, 1 to 5. */
export function MrcGradeField(props: MrcGradeFieldProps): JSX.Element {
  return <Select {...props} hint="1 to 5; not the modified scale, which begins with 0." choices={GRADES} />;
}
