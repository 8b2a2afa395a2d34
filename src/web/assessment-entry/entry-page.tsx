import { ageInYears } from '../../domain/calendar/plain-date.js';
import { britishDate } from '../../domain/calendar/british-date.js';
import { londonTime } from '../../domain/calendar/london-time.js';
import type { Draft } from '../../domain/draft/draft.js';
import { DIAGNOSIS_WORDS } from '../../domain/referral/words.js';
import type { EntrySheet } from '../../usecases/assessments/entry-sheet.js';
import { attributeText } from '../components/field.js';
import { Button, ErrorSummary, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { capital } from '../components/words.js';
import { fieldId } from '../forms/form-errors.js';
import { Page } from '../page.js';
import { PersonName, spokenName } from '../people/names.js';
import { DRAFT_VERSION } from './field-names.js';
import { nextMissing } from './next-missing.js';
import { SheetBlocks } from './sheet-blocks.js';
import type { SheetState } from './sheet-state.js';
import { TIMEPOINT_WORDS } from './words.js';

/** Something to be said above the form. */
export interface SheetNotice {
  readonly kind: 'plain' | 'done' | 'warning';
  readonly title: string;
  readonly text: string;
}

interface EntryPageProps {
  readonly state: SheetState;
  readonly notice: SheetNotice | null;
}

/** One page for a whole assessment, in the order of the day. */
export function EntryPage({ state, notice }: EntryPageProps): JSX.Element {
  const { sheet, frame } = state;
  const action = sheetAddress(sheet);
  const title = `${capital(TIMEPOINT_WORDS[sheet.timepoint])}, ${spokenName(sheet.patient)}`;
  return (
    <Page frame={frame} title={title} scripts={['assessment-draft.js', 'assessment-walk.js']}>
      <Head sheet={sheet} />
      {notice === null ? '' : <SheetNoticeView notice={notice} />}
      <Recorded sheet={sheet} />
      <ErrorSummary
        errors={[...state.errors, ...state.queries.filter(({ field }) => field !== '')]}
        title={
          state.errors.length > 0
            ? 'Nothing was recorded: please mend this first'
            : 'Nothing was recorded: please check these values'
        }
      />
      <Form frame={frame} action={action} class="sheet">
        <input type="hidden" name={DRAFT_VERSION} value={String(state.draftVersion)} />
        {/* Enter in a field checks; only the button below records. */}
        <button type="submit" class="visually-hidden" formaction={`${action}/check`} tabindex="-1">
          Check what is typed
        </button>
        <SheetBlocks state={state} isLive />
        <Foot state={state} action={action} />
      </Form>
      {sheet.draft.state === 'open' ? <DiscardForm state={state} action={action} /> : ''}
    </Page>
  );
}

/** Address of the sheet of an assessment. */
export function sheetAddress({ referral, timepoint }: Pick<EntrySheet, 'referral' | 'timepoint'>): string {
  return `/referrals/${referral.id}/assessments/${timepoint}`;
}

function Head({ sheet }: { readonly sheet: EntrySheet }): JSX.Element {
  const { patient, referral, timepoint } = sheet;
  const { bornOn } = patient;
  const facts = [
    `born ${britishDate(bornOn)}`,
    DIAGNOSIS_WORDS[referral.diagnosis],
    `referred ${britishDate(referral.receivedOn)}`,
  ];
  return (
    <>
      <p class="crumb">
        <a href={`/referrals/${referral.id}`}>Referral</a>
      </p>
      <h1 safe>{capital(TIMEPOINT_WORDS[timepoint])}</h1>
      <p class="lead">
        <PersonName person={patient} />
        <span class="muted" safe>{`: ${facts.join('; ')}`}</span>
      </p>
    </>
  );
}

function SheetNoticeView({ notice }: { readonly notice: SheetNotice }): JSX.Element {
  return (
    <Notice kind={notice.kind} title={notice.title} isLive>
      <p safe>{notice.text}</p>
    </Notice>
  );
}

/** An assessment of this kind that is in the record already. */
function Recorded({ sheet }: { readonly sheet: EntrySheet }): JSX.Element {
  const [former] = sheet.assessments.filter(({ entry }) => entry.timepoint === sheet.timepoint);
  if (former === undefined) return '';
  return (
    <Notice kind="check" title={`A ${TIMEPOINT_WORDS[sheet.timepoint]} is recorded already`}>
      <p>
        <span safe>{`It is of ${britishDate(former.entry.assessedOn)}.`}</span> What you record here is a
        second one beside it; a mistake in the first is{' '}
        <a href={`/assessments/${former.id}/correction`}>corrected there</a>.
      </p>
    </Notice>
  );
}

/** Says whose the draft is; the script keeps it up to date. */
export function savedWords({ saved, state }: Draft): string {
  if (saved === null || state !== 'open') return 'Nothing is saved yet.';
  return `Draft saved ${londonTime(saved.at)} by ${saved.byName}.`;
}

function Foot({ state, action }: { readonly state: SheetState; readonly action: string }): JSX.Element {
  const missing = nextMissing(state.values);
  return (
    <div class="sheet-foot" data-draft-address={attributeText(`${action}/draft`)}>
      <p class="saved" role="status" data-saved safe>
        {savedWords(state.sheet.draft)}
      </p>
      <p class="next" data-next>
        {missing === null ? (
          'Nothing is missing.'
        ) : (
          <>
            {'Next: '}
            <a href={`#${fieldId(missing.field)}`} safe>
              {missing.what}
            </a>
          </>
        )}
      </p>
      <div class="actions">
        <button type="submit" class="button" formaction={`${action}/check`}>
          Save and check
        </button>
        <Button kind="primary">Record the assessment</Button>
      </div>
    </div>
  );
}

function DiscardForm({
  state,
  action,
}: {
  readonly state: SheetState;
  readonly action: string;
}): JSX.Element {
  return (
    <details class="discard">
      <summary>Throw this draft away</summary>
      <Form frame={state.frame} action={`${action}/discard`} label="Throw this draft away">
        <p>What was typed is gone then, for everybody. Nothing that was recorded is touched.</p>
        <input type="hidden" name={DRAFT_VERSION} value={String(state.draftVersion)} />
        <Button kind="grave">Throw the draft away</Button>
      </Form>
    </details>
  );
}

/** How old somebody is on a day. @example bornOn 1954-03-09, on 2026-04-20 -> '72 years' */
export function ageWords(sheet: EntrySheet, onDay: Parameters<typeof ageInYears>[1]): string {
  return `${ageInYears(sheet.patient.bornOn, onDay)} years`;
}
