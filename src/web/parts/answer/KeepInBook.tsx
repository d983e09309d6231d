import { useEffect, useState } from 'react';
import type { FitAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import { settingKey, type Setting } from '../../../core/machine/setting.ts';
import type { Study } from '../../../core/study/study.ts';
import { answerText as words } from '../../../words/en/screens/answer.ts';
import { newId } from '../../state/newId.ts';
import { earlierSheetsFor } from '../../state/useEarlier.ts';
import { useWorkshop } from '../../state/workshop.tsx';
import { Action, ActionLink } from '../action/Action.tsx';
import type { Step } from './SpeedSteps.tsx';

export interface KeepInBookProps {
  readonly study: Study;
  readonly answer: FitAnswer;
  /** The answer is older than what is shown. */
  readonly behind: boolean;
  readonly step: Step;
}

/**
 * Keeps the chosen setting, with all that it holds for. Pressed while a newer answer is still being reckoned, it keeps
 * the newer one.
 */
export const KeepInBook = ({ study, answer, behind, step }: KeepInBookProps) => {
  const { keeper } = useWorkshop();
  const setting = settingToKeep(study, answer, step);
  const [kept, setKept] = useState<Kept>();
  const [wanted, setWanted] = useState(false);
  if (wanted && !behind) {
    setWanted(false);
    if (setting !== undefined) setKept({ id: newId(), setting });
  }
  useEffect(() => {
    if (kept === undefined) return;
    const { id: entryId, setting: chosen } = kept;
    const keptAt = new Date().toISOString();
    const earlierSheets = earlierSheetsFor(study.id);
    keeper.make({
      kind: 'keep',
      studyId: study.id,
      entryId,
      setting: chosen,
      keptAt,
      earlierSheets,
    });
    // Each new `kept` is kept once; the id makes a second sending harmless.
  }, [kept, keeper, study.id]);
  if (setting === undefined && kept === undefined) return null;
  const isKept =
    kept !== undefined && settingKey(kept.setting) === (setting && settingKey(setting));
  return (
    <div className="actions">
      {setting === undefined || isKept ? null : (
        <Action kind="strong" onPress={() => setWanted(true)}>
          {words.keepThis(setting)}
        </Action>
      )}
      {kept === undefined ? null : (
        <span role="status" className="actions">
          <strong>{words.kept(kept.setting)}</strong>
          <ActionLink href={`/book/${kept.id}`}>{words.openEntry}</ActionLink>
        </span>
      )}
      <ActionLink href={`/study/${study.id}/prove`}>{words.prove}</ActionLink>
    </div>
  );
};

interface Kept {
  readonly id: string;
  readonly setting: Setting;
}

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
