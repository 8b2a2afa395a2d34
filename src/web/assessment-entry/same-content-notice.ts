import { britishDate } from '../../domain/calendar/british-date.js';
import { londonTime } from '../../domain/calendar/london-time.js';
import type { Refusal } from '../../domain/refusal/refusal.js';
import { recordedAlready } from '../../usecases/assessments/recorded-already.js';
import type { TeamMember } from '../../usecases/context.js';
import type { Web } from '../web.js';
import type { SheetNotice } from './draft-notices.js';
import { TIMEPOINT_WORDS } from './words.js';

/** Says on the sheet what is recorded with the same content, by whom and when; null where that is not what was refused. */
export async function sameContentNotice(
  { context, wordsFor }: Pick<Web, 'context' | 'wordsFor'>,
  actor: TeamMember,
  refusal: Refusal,
): Promise<SheetNotice | null> {
  if (refusal.code !== 'assessment-already-recorded') return null;
  const { title, detail } = wordsFor(refusal);
  const existing = await recordedAlready(context, actor, refusal.existingId);
  if (existing === null) return { kind: 'warning', title, text: detail };
  const { assessment, byName } = existing;
  const { entry, id, referralId, recordedAt, version } = assessment;
  const did = version > 1 ? 'corrected' : 'recorded';
  const which = `${TIMEPOINT_WORDS[entry.timepoint]} of ${britishDate(entry.assessedOn)}`;
  return {
    kind: 'warning',
    title,
    text: `${byName} ${did} the ${which} on ${londonTime(recordedAt)}, and it says the same. Nothing was stored again; what you typed is kept on this page. A second visit differs in its day or in what was measured; a mistake is corrected in the assessment that there is.`,
    link: {
      href: `/referrals/${referralId}/assessments/${entry.timepoint}/recorded/${id}`,
      words: 'Read the one that is recorded',
    },
  };
}
