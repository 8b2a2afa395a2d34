import type { TeamMember } from '../../usecases/context.js';
import type { OpenedReferral } from '../../usecases/referrals/open-referral.js';
import { ButtonLink } from '../components/parts.js';
import { stepsOf } from './referral-steps.js';

interface StepsSectionProps {
  readonly role: TeamMember['role'];
  readonly opened: OpenedReferral;
}

/** What somebody may do for a referral: each step leads to its page. */
export function StepsSection({ role, opened }: StepsSectionProps): JSX.Element {
  const { referral, stage, course } = opened;
  const steps = stepsOf(role, {
    id: referral.id,
    stage,
    isTriaged: referral.triage !== null,
    isAssessed: course?.isAssessed === true,
    isStartPlanned: referral.plannedStartOn !== null,
    closedFor: referral.closure?.reason ?? null,
  });
  if (steps.length === 0) return '';
  return (
    <nav class="actions steps not-printed" aria-label="Steps of this referral">
      {steps.map(({ words, address, isNext }) => (
        <ButtonLink href={address} kind={isNext ? 'primary' : 'plain'}>
          <span safe>{words}</span>
        </ButtonLink>
      ))}
    </nav>
  );
}
