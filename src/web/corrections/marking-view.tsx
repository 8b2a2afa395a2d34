import { londonTime } from '../../domain/calendar/london-time.js';
import type { Meanwhile } from '../../domain/history/history.js';
import type { NamedMark } from '../../usecases/corrections/named-mark.js';
import { ChangedMeanwhile } from '../components/changed-meanwhile.js';
import { attributeText } from '../components/field.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { ButtonLink } from '../components/parts.js';
import { Definitions, Text } from '../components/table.js';
import { KeptReason } from '../components/kept-reason.js';
import type { RecordWords } from '../components/value-words.js';
import { VersionField } from '../components/version-field.js';
import { capital } from '../components/words.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { SEND_FORM } from '../forms/send-form.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { PersonName } from '../people/names.js';
import type { MarkableEntry } from './marking.js';

/** What the page is about: an entry is marked, or a marked one restored. */
export type MarkingStep = 'entered-in-error' | 'restoration';

interface MarkingViewProps {
  readonly frame: Frame;
  readonly step: MarkingStep;
  /** Address of the page of the step, and of the other one. */
  readonly addresses: Readonly<Record<MarkingStep, string>>;
  readonly entry: MarkableEntry;
  readonly consequence: string;
  readonly fieldWords: RecordWords;
  readonly reason: string;
  readonly errors: FormErrors;
  readonly meanwhile: Meanwhile | null;
}

const WORDS: Readonly<
  Record<MarkingStep, { readonly title: string; readonly button: string; readonly leave: string }>
> = {
  'entered-in-error': {
    title: 'Mark as entered in error',
    button: 'Mark as entered in error',
    leave: 'Leave it as it is',
  },
  restoration: { title: 'Restore', button: 'Restore', leave: 'Leave it marked' },
};

/** Asks for the reason before an entry is marked as made in error, or restored. */
export function MarkingView(props: MarkingViewProps): JSX.Element {
  const { frame, step, entry, errors, meanwhile, fieldWords } = props;
  const { title } = WORDS[step];
  return (
    <Page frame={frame} title={errors.length === 0 ? title : `Error: ${title}`} scripts={[SEND_FORM]}>
      <p class="crumb">
        <a href={attributeText(entry.seenAt)}>
          {entry.person === null ? 'Class' : <PersonName person={entry.person} />}
        </a>
      </p>
      <h1 safe>{title}</h1>
      <p class="lead" safe>{`${capital(entry.words)}.`}</p>
      <ErrorSummary errors={errors} />
      {meanwhile === null ? '' : <ChangedMeanwhile meanwhile={meanwhile} words={fieldWords} />}
      <Definitions items={entry.facts.map(({ term, value }) => ({ term, value: <Text value={value} /> }))} />
      {(entry.mark === null) === (step === 'entered-in-error') ? (
        <MarkingForm {...props} />
      ) : (
        <OtherWay {...props} />
      )}
    </Page>
  );
}

function MarkingForm({
  frame,
  step,
  addresses,
  entry,
  consequence,
  reason,
  errors,
}: MarkingViewProps): JSX.Element {
  const { button, leave } = WORDS[step];
  return (
    <>
      {entry.mark === null ? <p safe>{consequence}</p> : <MarkNotice mark={entry.mark} />}
      <Form frame={frame} action={addresses[step]} sending="whole">
        <VersionField version={entry.version} />
        <KeptReason label="Reason" value={reason} error={errorAt(errors, 'reason')} />
        <div class="actions">
          <Button kind={step === 'restoration' ? 'primary' : 'grave'}>
            <span safe>{button}</span>
          </Button>
          <ButtonLink href={entry.seenAt}>
            <span safe>{leave}</span>
          </ButtonLink>
        </div>
      </Form>
    </>
  );
}

/** Somebody has taken the step already, or it was never needed. */
function OtherWay({ step, addresses, entry }: MarkingViewProps): JSX.Element {
  return (
    <>
      {entry.mark === null ? (
        <Notice kind="plain" title="Nothing is to be restored">
          <p>It stands in the record and counts.</p>
        </Notice>
      ) : (
        <MarkNotice mark={entry.mark} />
      )}
      <div class="actions">
        {step === 'entered-in-error' ? <ButtonLink href={addresses.restoration}>Restore it</ButtonLink> : ''}
        <ButtonLink href={entry.seenAt}>Back</ButtonLink>
      </div>
    </>
  );
}

/** Who marked an entry, when and why. */
function MarkNotice({ mark }: { readonly mark: NamedMark }): JSX.Element {
  return (
    <Notice kind="warning" title="Entered in error">
      <p safe>{markWords(mark)}</p>
    </Notice>
  );
}

/** @example 'Marked by Rosa Knot, 4 May 2026, 10:12: of another person' */
export function markWords({ byName, markedAt, reason }: NamedMark): string {
  return `Marked by ${byName}, ${londonTime(markedAt)}: ${reason}`;
}
