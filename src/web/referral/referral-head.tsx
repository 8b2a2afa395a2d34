import { ageInYears } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { britishDate } from '../../domain/calendar/british-date.js';
import { STAGE_WORDS } from '../../domain/referral/step-words.js';
import {
  DIAGNOSIS_WORDS,
  MODE_WORDS,
  PATHWAY_WORDS,
  SEX_WORDS,
  SOURCE_WORDS,
} from '../../domain/referral/words.js';
import type { ShownStage } from '../../domain/pathway/stage.js';
import type { OpenedReferral } from '../../usecases/referrals/open-referral.js';
import { Tag } from '../components/parts.js';
import { Definitions, Text } from '../components/table.js';
import { PersonName } from '../people/names.js';

interface ReferralHeadProps {
  readonly opened: OpenedReferral;
  readonly siteName: string;
  readonly today: PlainDate;
}

/** Who it is, where they stand, and what comes next. */
export function ReferralHead({ opened, siteName, today }: ReferralHeadProps): JSX.Element {
  const { patient, referral, stage } = opened;
  const { diagnosis, pathway, source, deliveryMode } = referral;
  return (
    <>
      <h1>
        <PersonName person={patient} />
      </h1>
      <p class="lead">
        <Text value={`${ageInYears(patient.bornOn, today)} years, ${SEX_WORDS[patient.sexAtBirth]}. `} />
        <Tag label={stageWords(stage)} /> <Text value={NEXT_STEP[stage]} />
      </p>
      <Definitions
        items={[
          { term: 'NHS number', value: <Text value={nhsNumberWords(patient.nhsNumber)} /> },
          { term: 'Born', value: <Text value={britishDate(patient.bornOn)} /> },
          {
            term: 'Diagnosis',
            value: <Text value={`${DIAGNOSIS_WORDS[diagnosis]}, ${PATHWAY_WORDS[pathway]}`} />,
          },
          { term: 'Site', value: <Text value={siteName} /> },
          {
            term: 'Delivered',
            value: <Text value={deliveryMode === null ? 'not decided' : MODE_WORDS[deliveryMode]} />,
          },
          { term: 'Referred by', value: <Text value={SOURCE_WORDS[source]} /> },
        ]}
      />
    </>
  );
}

function stageWords(stage: ShownStage): string {
  return stage === 'entered-in-error' ? 'entered in error' : STAGE_WORDS[stage];
}

const NEXT_STEP: Readonly<Record<ShownStage, string>> = {
  'awaiting-triage': 'Next: decide at triage.',
  'awaiting-assessment': 'Next: book and do the baseline assessment.',
  'awaiting-start': 'Next: start the programme.',
  'in-programme': 'Next: keep the register of the classes.',
  'awaiting-discharge-assessment': 'Next: do the discharge assessment.',
  'awaiting-closure': 'Next: close the referral.',
  closed: 'Nothing is left to do.',
  'entered-in-error': 'Nothing is to be done.',
};

/** In three groups, as it is read out. @example nhsNumberWords('9990000018') -> '999 000 0018' */
function nhsNumberWords(nhsNumber: string | null): string {
  return nhsNumber === null ? 'none' : nhsNumber.replace(/^(\d{3})(\d{3})(\d{4})$/, '$1 $2 $3');
}
