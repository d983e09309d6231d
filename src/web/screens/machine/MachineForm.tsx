import type { Bed, Machine } from '../../../core/machine/machine.ts';
import { refused, type Outcome } from '../../../core/problem.ts';
import {
  currentWords,
  lengthWords,
  powerWords,
  speedWords,
  wattsWords,
  strengthText,
  machineText as words,
} from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { LinesField } from '../../parts/quantity/LinesField.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import {
  readGap,
  readRated,
  readSize,
  readCutPower,
  readCutSpeed,
  readWatts,
} from '../../parts/quantity/readers.ts';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { withoutStrength } from '../../parts/strength/StrengthQuestion.tsx';
import { useDraft } from '../../state/useDraft.ts';
import { withOptional } from '../../state/withOptional.ts';
import { GcodeForm } from './GcodeForm.tsx';
import { readTubeLines, tubeLines } from './tubeLines.ts';
import { pages } from '../../state/pages.ts';

export interface MachineFormProps {
  /** Drafts are kept under it. */
  readonly machineId: string;
  readonly machine: Machine;
  readonly onChange: (machine: Machine) => void;
}

const currentActs = ['current'] as const;

/** Limits, tube and bed; every line may stay empty. */
export const MachineForm = ({ machineId, machine, onChange }: MachineFormProps) => {
  const change = (part: Partial<Machine>): void => onChange({ ...machine, ...part });
  const [least, most] = machine.speedRangeMmPerS;
  return (
    <>
      <TextLine
        label={words.name}
        value={machine.name ?? ''}
        onChange={(name) =>
          onChange(withOptional(machine, 'name', name.trim() === '' ? undefined : name))
        }
      />
      <Section title={words.limits}>
        <div className="field-row">
          <QuantityField
            label={words.maxPower}
            value={machine.maxPowerPct}
            show={powerWords}
            parse={readCutPower}
            onChange={(maxPowerPct) => {
              if (maxPowerPct !== undefined) change({ maxPowerPct });
            }}
          />
          <QuantityField
            label={words.slowest}
            value={least}
            show={speedWords}
            parse={readSpeedThat((value) => value < most, most)}
            onChange={(value) => {
              if (value !== undefined) change({ speedRangeMmPerS: [value, most] });
            }}
          />
          <QuantityField
            label={words.fastest}
            value={most}
            show={speedWords}
            parse={readSpeedThat((value) => value > least, least)}
            onChange={(value) => {
              if (value !== undefined) change({ speedRangeMmPerS: [least, value] });
            }}
          />
        </div>
      </Section>
      <Section title={words.tube}>
        <QuantityField
          label={words.strength}
          hint={words.strengthHint}
          optional
          value={machine.nominalW}
          show={wattsWords}
          parse={readWatts}
          onChange={(value) => onChange(withOptional(withoutStrength(machine), 'nominalW', value))}
        />
        {machine.slowCut === undefined || machine.nominalW !== undefined ? null : (
          <>
            <p>{strengthText.bySlowCut(machine.slowCut)}</p>
            <div className="actions">
              <Action kind="quiet" onPress={() => onChange(withoutStrength(machine))}>
                {strengthText.forget}
              </Action>
            </div>
          </>
        )}
        <Cautions acts={currentActs} />
        <QuantityField
          label={words.rated}
          hint={words.ratedHint}
          optional
          value={machine.ratedCurrentMa}
          show={currentWords}
          parse={readRated}
          onChange={(value) => onChange(withOptional(machine, 'ratedCurrentMa', value))}
        />
        <TubePoints machineId={machineId} machine={machine} onChange={onChange} />
        <div className="actions">
          <ActionLink href={pages.meter}>{words.readMeter}</ActionLink>
        </div>
      </Section>
      <Section title={words.bed}>
        <BedForm
          bed={machine.bed}
          onChange={(bed) => onChange(withOptional(machine, 'bed', bed))}
        />
      </Section>
      <GcodeForm
        machineId={machineId}
        dialect={machine.gcode}
        onChange={(gcode) => change({ gcode })}
      />
    </>
  );
};

/** A speed that leaves a range between it and the other end. */
const readSpeedThat =
  (fits: (speedMmPerS: number) => boolean, otherMmPerS: number) =>
  (text: string): Outcome<number> => {
    const read = readCutSpeed(text);
    return read.ok && !fits(read.value)
      ? refused('speed-range-empty', { other: otherMmPerS })
      : read;
  };

const TubePoints = ({ machineId, machine, onChange }: MachineFormProps) => {
  const [text, setText] = useDraft({
    name: `readings.${machineId}`,
    initial: tubeLines(machine.tubePoints ?? []),
  });
  const read = readTubeLines(text);
  return (
    <LinesField
      label={words.points}
      hint={words.pointsHint}
      value={text}
      problem={read.ok ? undefined : read.problem}
      onChange={(next) => {
        setText(next);
        const outcome = readTubeLines(next);
        if (!outcome.ok) return;
        const points = outcome.value.length === 0 ? undefined : outcome.value;
        onChange(withOptional(machine, 'tubePoints', points));
      }}
    />
  );
};

const BedForm = ({
  bed,
  onChange,
}: {
  readonly bed: Bed | undefined;
  readonly onChange: (bed: Bed) => void;
}) => {
  const now: Bed = bed ?? { widthMm: 600, heightMm: 400 };
  const field = (
    label: string,
    value: number | undefined,
    take: (mm: number) => Bed,
    hint?: string,
    parse = readSize,
  ) => (
    <QuantityField
      label={label}
      {...(hint === undefined ? {} : { hint })}
      optional
      value={value}
      show={lengthWords}
      parse={parse}
      onChange={(mm) => {
        if (mm !== undefined) onChange(take(mm));
      }}
    />
  );
  return (
    <div className="field-row">
      {field(words.width, bed?.widthMm, (widthMm) => ({ ...now, widthMm }))}
      {field(words.height, bed?.heightMm, (heightMm) => ({ ...now, heightMm }))}
      {field(words.gap, bed?.gapMm, (gapMm) => ({ ...now, gapMm }), words.gapHint, readGap)}
    </div>
  );
};
