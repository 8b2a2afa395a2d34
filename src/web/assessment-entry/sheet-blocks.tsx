import { TextArea } from '../components/text-fields.js';
import { RestingBlock, SafetyBlock, WhenAndWhere } from './before-block.js';
import { FurtherWalks } from './further-walks.js';
import { PhysicalTestsBlock } from './physical-block.js';
import { QuestionnairesBlock } from './questionnaire-block.js';
import { fieldState } from './sheet-state.js';
import type { SheetState } from './sheet-state.js';
import { StandBlock } from './stand-block.js';
import { EnduranceBlock, FirstWalkBlock, RestBlock, SecondWalkBlock } from './walk-blocks.js';

interface SheetBlocksProps {
  readonly state: SheetState;
  /** While the tests are done: shuttles are counted, and the rest between the walks has a clock. */
  readonly isLive: boolean;
  /** Path of the sheet. */
  readonly action: string;
}

/** All that is asked of an assessment, in the order of the day. */
export function SheetBlocks({ state, isLive, action }: SheetBlocksProps): JSX.Element {
  return (
    <>
      <WhenAndWhere state={state} />
      <SafetyBlock state={state} />
      <RestingBlock state={state} />
      <FirstWalkBlock state={state} isCounted={isLive} />
      {isLive ? <RestBlock state={state} /> : ''}
      <SecondWalkBlock state={state} isCounted={isLive} />
      <EnduranceBlock state={state} />
      <FurtherWalks state={state} action={action} />
      <StandBlock state={state} />
      <PhysicalTestsBlock state={state} />
      <QuestionnairesBlock state={state} />
      <TextArea {...fieldState(state, 'notes')} label="Notes" rows={3} maxlength={5000} />
    </>
  );
}
