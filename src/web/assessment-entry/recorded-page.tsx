import { z } from 'zod';
import { britishDate } from '../../domain/calendar/british-date.js';
import { TIMEPOINTS } from '../../domain/referral/closed-sets.js';
import { openEntrySheet, previewEntry } from '../../usecases/assessments/entry-sheet.js';
import { listCautions } from '../../usecases/safety/acknowledge-caution.js';
import { CautionNotice } from '../cautions/cautions-view.js';
import { Notice } from '../components/notice.js';
import { ButtonLink } from '../components/parts.js';
import { Table, Text } from '../components/table.js';
import { capital } from '../components/words.js';
import { frameOf, sendPage } from '../frame.js';
import { Page } from '../page.js';
import { PersonName, spokenName } from '../people/names.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { figureColumns } from './figure-words.js';
import { TIMEPOINT_WORDS } from './words.js';

const Recorded = z.object({ referralId: z.uuid(), timepoint: z.enum(TIMEPOINTS), assessmentId: z.uuid() });

/** What came of an assessment that has just been recorded: its results, and what must be known of them. */
export function recordedPage(app: WebApp, web: Web): void {
  const { context } = web;
  const path = '/referrals/:referralId/assessments/:timepoint/recorded/:assessmentId';
  app.get(path, pageOf('page:assessment'), async (request, reply) => {
    const place = Recorded.safeParse(request.params);
    const actor = memberOf(request);
    const opened = place.success ? await openEntrySheet(context, actor, place.data) : null;
    if (opened?.kind === 'refused') return sendRefusal(web, request, reply, opened.refusal);
    const found = opened?.value.assessments.find(({ id }) => id === place.data?.assessmentId);
    if (opened === null || found === undefined) {
      return sendRefusal(web, request, reply, { code: 'not-found', what: 'assessment' });
    }
    const others = opened.value.assessments.filter(({ id }) => id !== found.id);
    const sheet = { ...opened.value, assessments: others };
    const { figures } = await previewEntry(context, actor, sheet, found.entry);
    const cautions = await listCautions(context, actor, found.id);
    if (cautions.kind === 'refused') return sendRefusal(web, request, reply, cautions.refusal);
    const { patient, referral, timepoint } = sheet;
    return sendPage(
      reply,
      <Page frame={frameOf(request, reply)} title={`Recorded, ${spokenName(patient)}`}>
        <h1 safe>{`${capital(TIMEPOINT_WORDS[timepoint])} of ${britishDate(found.entry.assessedOn)}`}</h1>
        <p class="lead">
          <PersonName person={patient} />
        </p>
        <Notice kind="done" title="The assessment is recorded" isLive>
          <p>
            A mistake can be <a href={`/assessments/${found.id}/correction`}>corrected</a>: the former version
            stays in the history.
          </p>
        </Notice>
        {cautions.value.map((caution) => (
          <CautionNotice caution={caution} />
        ))}
        {cautions.value.some((each) => each.mustBeAcknowledged && each.acknowledgement === null) ? (
          <p class="actions">
            <ButtonLink href={`/assessments/${found.id}/cautions`}>Acknowledge the cautions</ButtonLink>
          </p>
        ) : (
          ''
        )}
        {figures.length === 0 ? (
          <p>Nothing was measured: the reasons are recorded.</p>
        ) : (
          <Table
            caption="Results of the day"
            columns={[
              { head: 'Measure' },
              { head: 'Result', isNumber: true },
              { head: 'Of predicted', isNumber: true },
              { head: 'Baseline', isNumber: true },
              { head: 'Change', isNumber: true },
            ]}
            rows={figures.map((figure) => figureColumns(figure).map((text) => <Text value={text} />))}
            isStacked
          />
        )}
        <div class="actions">
          <ButtonLink href={`/referrals/${referral.id}`} kind="primary">
            To the referral
          </ButtonLink>
          <ButtonLink href="/work-list">To the work list</ButtonLink>
        </div>
      </Page>,
    );
  });
}
