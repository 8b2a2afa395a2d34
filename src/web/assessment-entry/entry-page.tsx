import { britishDate } from '../../domain/calendar/british-date.js';
import { WHICH_COUNTS } from '../../domain/change/pair.js';
import type { Timepoint } from '../../domain/referral/closed-sets.js';
import { DIAGNOSIS_WORDS } from '../../domain/referral/words.js';
import type { EntrySheet } from '../../usecases/assessments/entry-sheet.js';
import { ErrorSummary, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { capital } from '../components/words.js';
import { Page } from '../page.js';
import { PersonName, spokenName } from '../people/names.js';
import { SheetNoticeView } from './draft-notices.js';
import type { SheetNotice } from './draft-notices.js';
import { nextMissing } from './next-missing.js';
import { SheetBlocks } from './sheet-blocks.js';
import { CheckOnEnter, DiscardForm, DraftVersionField, SheetFoot } from './sheet-foot.js';
import type { SheetState } from './sheet-state.js';
import { TIMEPOINT_WORDS } from './words.js';

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
      <SheetNoticeView notice={notice} />
      {notice?.link === undefined ? <Recorded sheet={sheet} /> : ''}
      <ErrorSummary
        errors={[...state.errors, ...state.queries.filter(({ field }) => field !== '')]}
        title={
          state.errors.length > 0
            ? 'Nothing was recorded: please mend this first'
            : 'Nothing was recorded: please check these values'
        }
      />
      <Form frame={frame} action={action} class="sheet">
        <DraftVersionField draft={state.draft} />
        <CheckOnEnter action={action} />
        <SheetBlocks state={state} isLive action={action} />
        <SheetFoot
          draft={state.draft}
          action={action}
          missing={nextMissing(state.values)}
          recordWords="Record the assessment"
        />
      </Form>
      <DiscardForm frame={frame} draft={state.draft} action={action} />
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

/** An assessment of this kind that is in the record already. */
function Recorded({ sheet }: { readonly sheet: EntrySheet }): JSX.Element {
  const [former] = sheet.assessments.filter(({ entry }) => entry.timepoint === sheet.timepoint);
  if (former === undefined) return '';
  return (
    <Notice kind="check" title={`A ${TIMEPOINT_WORDS[sheet.timepoint]} is recorded already`}>
      <p>
        <span safe>{`It is of ${britishDate(former.entry.assessedOn)}.`}</span> What you record here is a
        second one beside it<span safe>{WHICH_COUNTS_HERE[sheet.timepoint]}</span>; a mistake in the first is{' '}
        <a href={`/assessments/${former.id}/correction`}>corrected there</a>.
      </p>
    </Notice>
  );
}

const WHICH_COUNTS_HERE: Readonly<Record<Timepoint, string>> = {
  baseline: `: ${WHICH_COUNTS.baseline}`,
  discharge: `: ${WHICH_COUNTS.discharge}`,
  'follow-up': '',
};
