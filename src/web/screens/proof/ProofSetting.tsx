import { useState } from 'react';
import { problemOf, type Problem } from '../../../core/problem.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import { powerWords, speedWords, proofText as words } from '../../../words/texts.ts';
import { CountField } from '../../parts/quantity/CountField.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readJump, readPower } from '../../parts/quantity/readers.ts';
import { SpeedAndPower } from '../../parts/quantity/SpeedAndPower.tsx';

export interface ProofSettingProps {
  /** What to begin with. */
  readonly setting: Setting | undefined;
  /** A whole setting, or undefined while speed or power is missing. */
  readonly onChange: (setting: Setting | undefined) => void;
  /** The speed at which the controller begins to add power: a value of the machine. */
  readonly startMmPerS: number | undefined;
  readonly onStart: (startMmPerS: number | undefined) => void;
}

interface Draft {
  readonly speedMmPerS: number | undefined;
  readonly powerPct: number | undefined;
  readonly minPowerPct: number | undefined;
  readonly passes: number;
}

/** All of a setting that a drawing's corners depend on. */
export const ProofSetting = ({ setting, onChange, startMmPerS, onStart }: ProofSettingProps) => {
  const [draft, setDraft] = useState<Draft>({
    speedMmPerS: setting?.speedMmPerS,
    powerPct: setting?.powerPct,
    minPowerPct: setting?.minPowerPct,
    passes: setting?.passes ?? 1,
  });
  const change = (part: Partial<Draft>): void => {
    const next = { ...draft, ...part };
    setDraft(next);
    onChange(wholeSetting(next, setting));
  };
  return (
    <fieldset className="proof-setting">
      <legend className="field-label">{words.setting}</legend>
      <div className="field-row">
        <SpeedAndPower
          speedMmPerS={draft.speedMmPerS}
          powerPct={draft.powerPct}
          isOptional
          onChange={change}
        />
        <QuantityField
          label={words.minPower}
          optional
          hint={words.minPowerHint}
          value={draft.minPowerPct}
          show={powerWords}
          problem={cornerProblem(draft)}
          parse={readPower}
          onChange={(minPowerPct) => change({ minPowerPct })}
        />
        <QuantityField
          label={words.startSpeed}
          optional
          hint={words.startSpeedHint}
          value={startMmPerS}
          show={speedWords}
          parse={readJump}
          onChange={onStart}
        />
        <CountField
          label={words.passes}
          value={draft.passes}
          least={1}
          most={9}
          onChange={(passes) => change({ passes })}
        />
      </div>
    </fieldset>
  );
};

/** A controller takes no more in the corners than at full speed. */
const cornerProblem = ({ powerPct, minPowerPct }: Draft): Problem | undefined =>
  powerPct !== undefined && minPowerPct !== undefined && minPowerPct > powerPct
    ? problemOf('corner-power-too-high', { powerPct })
    : undefined;

const wholeSetting = (draft: Draft, before: Setting | undefined): Setting | undefined => {
  const { speedMmPerS, powerPct, minPowerPct, passes } = draft;
  if (cornerProblem(draft) !== undefined) return undefined;
  if (speedMmPerS === undefined || powerPct === undefined || speedMmPerS <= 0 || powerPct <= 0) {
    return undefined;
  }
  const { air } = before ?? {};
  return {
    speedMmPerS,
    powerPct,
    ...(minPowerPct === undefined ? {} : { minPowerPct }),
    passes,
    ...(air === undefined ? {} : { air }),
  };
};
