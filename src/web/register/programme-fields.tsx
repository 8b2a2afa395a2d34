import { DELIVERY_MODES } from '../../domain/referral/closed-sets.js';
import { MODE_WORDS } from '../../domain/referral/words.js';
import { Select } from '../components/choices.js';
import { NumberField } from '../components/text-fields.js';
import { choicesOf } from '../components/words.js';

interface ProgrammeFieldsProps {
  /** What a field shows, by its name. */
  readonly at: (name: string) => {
    readonly name: string;
    readonly value: string;
    readonly error: string | null;
  };
}

/** How the programme of a person is planned. */
export function ProgrammeFields({ at }: ProgrammeFieldsProps): JSX.Element {
  const hint = 'Left empty, the number that your team has set applies.';
  return (
    <>
      <Select
        {...at('deliveryMode')}
        label="Delivered"
        none="Not decided"
        choices={choicesOf(DELIVERY_MODES, MODE_WORDS)}
      />
      <NumberField
        {...at('plannedSessions')}
        label="Planned supervised sessions (optional)"
        hint={hint}
        maxlength={2}
      />
      <NumberField {...at('plannedWeeks')} label="Planned weeks (optional)" hint={hint} maxlength={2} />
    </>
  );
}
