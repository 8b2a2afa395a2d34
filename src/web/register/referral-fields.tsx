import { DIAGNOSES, PATHWAYS, REFERRAL_SOURCES } from '../../domain/referral/closed-sets.js';
import { DIAGNOSIS_WORDS, PATHWAY_WORDS, SOURCE_WORDS } from '../../domain/referral/words.js';
import type { Place } from '../../usecases/providers.js';
import { Checkbox, RadioGroup, Select } from '../components/choices.js';
import { DateField } from '../components/date-field.js';
import { MrcGradeField } from '../components/mrc-grade-field.js';
import { TextArea } from '../components/text-fields.js';
import { choicesOf } from '../components/words.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { ProgrammeFields } from './programme-fields.js';
import { DISCHARGE_NOT_KNOWN } from './read-registration.js';
import type { TypedValues } from './typed-values.js';

interface ReferralFieldsProps {
  readonly typed: TypedValues;
  readonly errors: FormErrors;
  readonly sites: readonly Place[];
  readonly commissioners: readonly Place[];
}

/** What is asked about the referral. */
export function ReferralFields({ typed, errors, sites, commissioners }: ReferralFieldsProps): JSX.Element {
  const at = (name: string) => ({ name, error: errorAt(errors, name), value: typed.text(name) });
  return (
    <>
      <DateField
        name="receivedOn"
        label="Received on"
        hint="The day on which it reached your team: the wait is counted from here."
        value={typed.date('receivedOn')}
        error={errorAt(errors, 'receivedOn')}
      />
      <Select
        {...at('source')}
        label="Referred by"
        none="Choose"
        choices={choicesOf(REFERRAL_SOURCES, SOURCE_WORDS)}
      />
      <Select
        {...at('diagnosis')}
        label="Main respiratory diagnosis"
        none="Choose"
        choices={choicesOf(DIAGNOSES, DIAGNOSIS_WORDS)}
      />
      <TextArea
        {...at('otherConditions')}
        label="Other conditions (optional)"
        hint="What matters for exercise."
        rows={2}
        maxlength={2000}
      />
      <RadioGroup {...at('pathway')} label="Pathway" choices={choicesOf(PATHWAYS, PATHWAY_WORDS)} />
      <div class="after-exacerbation">
        <DateField
          name="hospitalDischargedOn"
          label="Discharged from hospital on"
          hint="After an exacerbation only: the start is counted from here as well."
          value={typed.date('hospitalDischargedOn')}
          error={errorAt(errors, 'hospitalDischargedOn')}
        />
        <Checkbox
          name={DISCHARGE_NOT_KNOWN}
          label="Not known yet, or still in hospital"
          isTicked={typed.isTicked(DISCHARGE_NOT_KNOWN)}
        />
      </div>
      <MrcGradeField
        {...at('mrcGrade')}
        label="MRC dyspnoea grade in the referral"
        none="Not in the referral"
      />
      <RadioGroup {...at('siteId')} label="Site" choices={named(sites)} />
      <Select
        {...at('commissionerId')}
        label="Commissioner"
        none="Not known"
        choices={named(commissioners)}
      />
      <ProgrammeFields at={at} />
    </>
  );
}

function named(places: readonly Place[]): readonly { readonly value: string; readonly label: string }[] {
  return places.map(({ id, name }) => ({ value: id, label: name }));
}
