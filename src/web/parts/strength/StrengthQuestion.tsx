import type { Machine } from '../../../core/machine/machine.ts';
import { wattsWords, strengthText as words } from '../../../words/texts.ts';
import { useDraft } from '../../state/useDraft.ts';
import { withOptional } from '../../state/withOptional.ts';
import { Choice } from '../choice/Choice.tsx';
import { QuantityField } from '../quantity/QuantityField.tsx';
import { readWatts } from '../quantity/readers.ts';
import { SpeedAndPower, type SpokenSetting } from '../quantity/SpeedAndPower.tsx';

export interface StrengthQuestionProps {
  readonly machine: Machine;
  /** The sheet that a slow setting would be of. */
  readonly sheet: { readonly material: string; readonly thicknessMm: number };
  readonly onChange: (machine: Machine) => void;
}

const ways = ['watts', 'slow-cut', 'unknown'] as const;
type Way = (typeof ways)[number];

interface Draft {
  readonly way?: Way;
  readonly slow: SpokenSetting;
}

/** Asks how strong a machine is: the watts of its tube, or a slow setting that has cut, or nobody knows. Each is an answer. */
export const StrengthQuestion = ({ machine, sheet, onChange }: StrengthQuestionProps) => {
  const [{ way, slow }, setDraft] = useDraft<Draft>({ name: 'strength', initial: { slow: {} } });
  const unsaid = withoutStrength(machine);
  return (
    <div className="stack">
      <Choice<Way>
        label={words.question}
        lay="list"
        value={way}
        options={ways.map((value) => ({ value, ...words.ways[value] }))}
        onChange={(chosen) => {
          setDraft({ way: chosen, slow });
          if (chosen === 'unknown') onChange({ ...unsaid, strengthUnknown: true });
        }}
      />
      {way === 'watts' ? (
        <QuantityField
          label={words.watts}
          value={machine.nominalW}
          show={wattsWords}
          parse={readWatts}
          onChange={(nominalW) => {
            if (nominalW !== undefined) onChange({ ...unsaid, nominalW });
          }}
        />
      ) : null}
      {way === 'slow-cut' ? (
        <div className="field-row">
          <SpeedAndPower
            {...slow}
            labels={{ speed: words.slowSpeed, power: words.slowPower }}
            onChange={(part) => {
              const said = { ...slow, ...part };
              setDraft({ way, slow: said });
              const { speedMmPerS, powerPct } = said;
              if (speedMmPerS !== undefined && powerPct !== undefined)
                onChange({ ...unsaid, slowCut: { ...sheet, speedMmPerS, powerPct } });
            }}
          />
        </div>
      ) : null}
      <p className="small">{words.stored}</p>
    </div>
  );
};

/** As if nobody had been asked. */
export const withoutStrength = (machine: Machine): Machine =>
  withOptional(
    withOptional(withOptional(machine, 'nominalW', undefined), 'slowCut', undefined),
    'strengthUnknown',
    undefined,
  );
