import { powerWords, speedWords, proofText as words } from '../../../words/texts.ts';
import { CountField } from '../../parts/quantity/CountField.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readJump, readPower } from '../../parts/quantity/readers.ts';
import { SpeedAndPower } from '../../parts/quantity/SpeedAndPower.tsx';
import { cornerProblem, type SpokenProof } from './spokenProof.ts';

export interface ProofSettingProps {
  readonly spoken: SpokenProof;
  readonly onChange: (spoken: SpokenProof) => void;
  /** The speed at which the controller begins to add power: a value of the machine. */
  readonly startMmPerS: number | undefined;
  /** Absent: this device may not say it. */
  readonly onStart: ((startMmPerS: number | undefined) => void) | undefined;
}

/** The setting that a drawing is proven with. It holds nothing by itself: what stands in it may be reckoned anew while a person types. */
export const ProofSetting = ({ spoken, onChange, startMmPerS, onStart }: ProofSettingProps) => {
  const change = (part: Partial<SpokenProof>): void => onChange({ ...spoken, ...part });
  return (
    <fieldset className="proof-setting">
      <legend className="field-label">{words.setting}</legend>
      <div className="field-row">
        <SpeedAndPower
          speedMmPerS={spoken.speedMmPerS}
          powerPct={spoken.powerPct}
          isOptional
          onChange={change}
        />
        <QuantityField
          label={words.minPower}
          optional
          hint={words.minPowerHint}
          value={spoken.minPowerPct}
          show={powerWords}
          problem={cornerProblem(spoken)}
          parse={readPower}
          onChange={(minPowerPct) => change({ minPowerPct })}
        />
        {onStart === undefined ? null : (
          <QuantityField
            label={words.startSpeed}
            optional
            hint={words.startSpeedHint}
            value={startMmPerS}
            show={speedWords}
            parse={readJump}
            onChange={onStart}
          />
        )}
        <CountField
          label={words.passes}
          value={spoken.passes}
          least={1}
          most={9}
          onChange={(passes) => change({ passes })}
        />
      </div>
    </fieldset>
  );
};
