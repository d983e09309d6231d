import type { Machine } from '../../../core/machine/machine.ts';
import {
  accelerationWords,
  lengthWords,
  speedWords,
  motionText as words,
} from '../../../words/texts.ts';
import { Choice } from '../../parts/choice/Choice.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import {
  readAcceleration,
  readCutSpeed,
  readDeviation,
  readJump,
} from '../../parts/quantity/readers.ts';
import { useDraft } from '../../state/useDraft.ts';
import { withOptional } from '../../state/withOptional.ts';
import { draftOf, motionOf, type MotionDraft } from './motionDraft.ts';

export interface MotionFormProps {
  readonly machineId: string;
  readonly machine: Machine;
  readonly onChange: (machine: Machine) => void;
}

const rules = ['speed-jump', 'junction-deviation'] as const;

/** What a controller's own list of settings says. It counts as soon as it is whole. */
export const MotionForm = ({ machineId, machine, onChange }: MotionFormProps) => {
  const [draft, setDraft] = useDraft({
    name: `motion.${machineId}`,
    initial: draftOf(machine.motion),
  });
  const change = (part: Partial<MotionDraft>): void => {
    const next = { ...draft, ...part };
    setDraft(next);
    onChange(withOptional(machine, 'motion', motionOf(next, machine.motion)));
  };
  const speed = (
    label: string,
    value: number | undefined,
    take: (v?: number) => MotionDraftPart,
    parse = readJump,
  ) => (
    <QuantityField
      label={label}
      optional
      value={value}
      show={speedWords}
      parse={parse}
      onChange={(mmPerS) => change(take(mmPerS))}
    />
  );
  return (
    <>
      <p className="small soft">{words.typedMore}</p>
      <div className="field-row">
        <QuantityField
          label={words.acceleration}
          optional
          value={draft.accelerationMmPerS2}
          show={accelerationWords}
          parse={readAcceleration}
          onChange={(accelerationMmPerS2) => change({ accelerationMmPerS2 })}
        />
        {speed(
          words.travel,
          draft.travelSpeedMmPerS,
          (travelSpeedMmPerS) => ({ travelSpeedMmPerS }),
          readCutSpeed,
        )}
      </div>
      <Choice
        label={words.rule}
        value={draft.rule}
        options={rules.map((value) => ({ value, ...words.rules[value] }))}
        onChange={(rule) => change({ rule })}
      />
      {draft.rule === 'speed-jump' ? (
        <div className="field-row">
          {speed(words.jumpX, draft.xMmPerS, (xMmPerS) => ({ xMmPerS }))}
          {speed(words.jumpY, draft.yMmPerS, (yMmPerS) => ({ yMmPerS }))}
        </div>
      ) : (
        <QuantityField
          label={words.deviation}
          optional
          value={draft.deviationMm}
          show={lengthWords}
          parse={readDeviation}
          onChange={(deviationMm) => change({ deviationMm })}
        />
      )}
      <QuantityField
        label={words.rampStart}
        hint={words.rampStartHint}
        optional
        value={machine.powerRampStartMmPerS}
        show={speedWords}
        parse={readJump}
        onChange={(value) => onChange(withOptional(machine, 'powerRampStartMmPerS', value))}
      />
      <p>{machine.motion === undefined ? words.incomplete : words.known(machine.motion)}</p>
    </>
  );
};

type MotionDraftPart = Partial<MotionDraft>;
