import { useState } from 'react';
import type { FitAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import type { Study } from '../../../core/study/study.ts';
import { answerText as words } from '../../../words/en/screens/answer.ts';
import { newId } from '../../state/newId.ts';
import { useWorkshop } from '../../state/workshop.tsx';
import { Action, ActionLink } from '../action/Action.tsx';
import type { Step } from './SpeedSteps.tsx';

export interface KeepInBookProps {
  readonly study: Study;
  readonly answer: FitAnswer;
  readonly step: Step;
}

/** Keeps the chosen setting, with all that it holds for. */
export const KeepInBook = ({ study, answer, step }: KeepInBookProps) => {
  const { keeper } = useWorkshop();
  const setting = settingToKeep(study, answer, step);
  const [kept, setKept] = useState<{ readonly id: string; readonly setting: string }>();
  if (setting === undefined) return null;
  const key = JSON.stringify(setting);
  if (kept?.setting === key) {
    return (
      <div className="actions" role="status">
        <strong>{words.kept}</strong>
        <ActionLink href={`/book/${kept.id}`}>{words.openEntry}</ActionLink>
      </div>
    );
  }
  const keep = (): void => {
    const entryId = newId();
    const keptAt = new Date().toISOString();
    keeper.make({ kind: 'keep', studyId: study.id, entryId, setting, keptAt });
    setKept({ id: entryId, setting: key });
  };
  return (
    <div className="actions">
      <Action kind="strong" onPress={keep}>
        {words.keepThis(setting)}
      </Action>
    </div>
  );
};

/** The chosen step as a whole setting; air and power in corners as the cards were cut. */
export const settingToKeep = (
  study: Study,
  { recommended, oneStepSurer }: FitAnswer,
  step: Step,
): Setting | undefined => {
  if (recommended === null) return undefined;
  const spot = step === 'surer' ? (oneStepSurer ?? recommended) : recommended;
  const { powerPct, speedMmPerS } = spot;
  const air = study.cards.at(-1)?.rungs[0]?.setting.air;
  const setting = { powerPct, speedMmPerS, passes: recommended.passes };
  return air === undefined ? setting : { ...setting, air };
};
