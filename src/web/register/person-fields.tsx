import {
  ETHNIC_CATEGORIES,
  GENDERS,
  NHS_NUMBER_MISSING_REASONS,
  SMOKING_STATUSES,
  YES_NO_NOT_KNOWN,
} from '../../domain/patient/patient.js';
import {
  ETHNIC_WORDS,
  GENDER_WORDS,
  NHS_NUMBER_MISSING_WORDS,
  SMOKING_WORDS,
  YES_NO_WORDS,
} from '../../domain/patient/words.js';
import { SEXES_AT_BIRTH } from '../../domain/referral/closed-sets.js';
import { SEX_WORDS } from '../../domain/referral/words.js';
import { RadioGroup, Select } from '../components/choices.js';
import { DateField } from '../components/date-field.js';
import { NumberField, TextField } from '../components/text-fields.js';
import { choicesOf } from '../components/words.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import type { TypedValues } from './typed-values.js';

interface FieldsProps {
  readonly typed: TypedValues;
  readonly errors: FormErrors;
}

/** Who it is. */
export function IdentityFields({ typed, errors }: FieldsProps): JSX.Element {
  const at = (name: string) => ({ name, error: errorAt(errors, name) });
  return (
    <>
      <TextField
        {...at('nhsNumber')}
        label="NHS number"
        hint="Ten digits; spaces do not matter."
        value={typed.text('nhsNumber')}
        inputmode="numeric"
        autocomplete="off"
        maxlength={20}
      />
      <Select
        {...at('nhsNumberMissingReason')}
        label="If there is no NHS number: why"
        none="There is one"
        value={typed.text('nhsNumberMissingReason')}
        choices={choicesOf(NHS_NUMBER_MISSING_REASONS, NHS_NUMBER_MISSING_WORDS)}
      />
      <TextField
        {...at('familyName')}
        label="Family name"
        value={typed.text('familyName')}
        autocomplete="off"
        maxlength={100}
      />
      <TextField
        {...at('givenName')}
        label="Given name"
        value={typed.text('givenName')}
        autocomplete="off"
        maxlength={100}
      />
      <DateField
        {...at('bornOn')}
        label="Date of birth"
        hint="Such as 9 3 1954."
        value={typed.date('bornOn')}
      />
    </>
  );
}

/** What predictions and the report need to know about a person; each is asked once. */
export function PersonFields({ typed, errors }: FieldsProps): JSX.Element {
  const at = (name: string) => ({ name, error: errorAt(errors, name), value: typed.text(name) });
  const yesNo = choicesOf(YES_NO_NOT_KNOWN, YES_NO_WORDS);
  return (
    <>
      <RadioGroup
        {...at('sexAtBirth')}
        label="Sex at birth"
        hint="For predicted values; nothing is assumed where it is not known."
        choices={choicesOf(SEXES_AT_BIRTH, SEX_WORDS)}
      />
      <Select {...at('gender')} label="Gender" choices={choicesOf(GENDERS, GENDER_WORDS)} />
      <Select
        {...at('ethnicCategory')}
        label="Ethnic category"
        choices={choicesOf(ETHNIC_CATEGORIES, ETHNIC_WORDS)}
      />
      <Select {...at('smokingStatus')} label="Smoking" choices={choicesOf(SMOKING_STATUSES, SMOKING_WORDS)} />
      <Select {...at('interpreterNeed')} label="Needs an interpreter" choices={yesNo} />
      <Select {...at('livesAlone')} label="Lives alone" choices={yesNo} />
      <Select {...at('homeOxygen')} label="Uses oxygen at home" choices={yesNo} />
      <Select
        {...at('deprivationQuintile')}
        label="Deprivation fifth of the home address"
        none="Not known"
        choices={[
          { value: '1', label: '1, most deprived fifth' },
          { value: '2', label: '2' },
          { value: '3', label: '3' },
          { value: '4', label: '4' },
          { value: '5', label: '5, least deprived fifth' },
        ]}
      />
      <NumberField
        {...at('deprivationIndexYear')}
        label="Year of the index it comes from"
        hint="Only with the fifth."
        maxlength={4}
      />
      <TextField
        {...at('gpPracticeCode')}
        label="Code of the general practice (optional)"
        autocomplete="off"
        width="short"
        maxlength={12}
      />
    </>
  );
}
