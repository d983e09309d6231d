import { provingStages, type ProvingStage } from '../../../app/drawing/proveOnDrawing.ts';
import { proofText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';

export interface ProvingBarProps {
  readonly stage: ProvingStage | undefined;
  readonly onStop: () => void;
}

/** How far the work is, and a way to end it. */
export const ProvingBar = ({ stage, onStop }: ProvingBarProps) => (
  <div className="proof-bar" hidden={stage === undefined}>
    {stage === undefined ? null : (
      <>
        <label className="proof-progress">
          <span>{words.stages[stage]}</span>
          <progress max={provingStages.length} value={provingStages.indexOf(stage) + 0.5} />
        </label>
        <Action onPress={onStop}>{words.cancel}</Action>
      </>
    )}
  </div>
);
