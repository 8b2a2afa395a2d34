import { britishDate } from '../../calendar/british-date.js';
import type { WorkRule } from '../work-list.js';

/** An open referral whom the pathway has nothing more to offer. */
export const closureDue: WorkRule = ({ course, stage }) => {
  if (stage !== 'awaiting-closure') return null;
  const { dischargeAssessedOn, facts } = course;
  if (dischargeAssessedOn !== null) {
    const reason = `Discharge assessment done on ${britishDate(dischargeAssessedOn)}, not closed`;
    return { dueOn: dischargeAssessedOn, reason };
  }
  if (facts.triage === null) return null;
  const { decision, decidedOn } = facts.triage;
  const words = decision === 'redirected' ? 'Redirected at triage' : 'Not suitable at triage';
  return { dueOn: decidedOn, reason: `${words} on ${britishDate(decidedOn)}, not closed` };
};
