import type { PropsWithChildren } from '@kitajs/html';
import { britishDate } from '../../domain/calendar/british-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Meanwhile } from '../../domain/history/history.js';
import { STAGE_WORDS } from '../../domain/referral/step-words.js';
import { DIAGNOSIS_WORDS, PATHWAY_WORDS, SOURCE_WORDS } from '../../domain/referral/words.js';
import { ErrorSummary } from '../components/form.js';
import { Definitions } from '../components/table.js';
import { ChangedMeanwhile } from '../components/changed-meanwhile.js';
import { capital } from '../components/words.js';
import type { FormErrors } from '../forms/form-errors.js';
import { SEND_FORM } from '../forms/send-form.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { PersonName } from '../people/names.js';
import { bornWords, nhsNumberWords } from '../people/person-words.js';
import { recordWords } from '../referral/record-words.js';
import type { ReferralOfPerson } from './load-referral.js';

type StepPageProps = PropsWithChildren<{
  readonly frame: Frame;
  readonly title: string;
  readonly of: ReferralOfPerson;
  readonly today: PlainDate;
  readonly errors: FormErrors;
  /** What somebody else changed while the form was open. */
  readonly meanwhile: Meanwhile | null | undefined;
}>;

/** A page for one step of a referral: whose it is, what the step needs to know of it, and a small form. */
export function StepPage({
  frame,
  title,
  of,
  today,
  errors,
  meanwhile,
  children,
}: StepPageProps): JSX.Element {
  const { referral, patient } = of;
  return (
    <Page frame={frame} title={errors.length === 0 ? title : `Error: ${title}`} scripts={[SEND_FORM]}>
      <p class="crumb">
        <a href={`/referrals/${referral.id}`}>
          <PersonName person={patient} />
        </a>
      </p>
      <h1 safe>{title}</h1>
      <ErrorSummary errors={errors} />
      <Definitions items={factsOf(of, today)} />
      {meanwhile === null || meanwhile === undefined ? (
        ''
      ) : (
        <ChangedMeanwhile meanwhile={meanwhile} words={recordWords()} />
      )}
      {children}
    </Page>
  );
}

function factsOf({ referral, patient, stage }: ReferralOfPerson, today: PlainDate) {
  const { receivedOn, source, diagnosis, pathway, hospitalDischargedOn, otherConditions } = referral;
  const discharged =
    hospitalDischargedOn === null ? '' : `, discharged from hospital ${britishDate(hospitalDischargedOn)}`;
  const facts: readonly (readonly [string, string])[] = [
    ['Born', bornWords(patient.bornOn, today)],
    ['NHS number', nhsNumberWords(patient)],
    ['Received', `${britishDate(receivedOn)}, ${SOURCE_WORDS[source]}`],
    ['Diagnosis', capital(DIAGNOSIS_WORDS[diagnosis])],
    ['Pathway', `${capital(PATHWAY_WORDS[pathway])}${discharged}`],
    ...(otherConditions === null ? [] : ([['Other conditions', otherConditions]] as const)),
    ['Stage', capital(STAGE_WORDS[stage])],
  ];
  return facts.map(([term, value]) => ({ term, value: <span safe>{value}</span> }));
}
