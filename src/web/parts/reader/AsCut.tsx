import { useState } from 'react';
import type { Setting } from '../../../core/machine/setting.ts';
import { powerWords, speedWords } from '../../../words/en/figures.ts';
import { readingText as words } from '../../../words/en/screens/reading.ts';
import { Action } from '../action/Action.tsx';
import { readCutPower, readCutSpeed } from '../quantity/readers.ts';
import { QuantityField } from '../quantity/QuantityField.tsx';

export interface AsCutProps {
  readonly setting: Setting;
  readonly onSay: (setting: Setting) => void;
  readonly onBack: () => void;
}

/** Corrects what a cell was really cut at. */
export const AsCut = ({ setting, onSay, onBack }: AsCutProps) => {
  const [speedMmPerS, setSpeed] = useState<number | undefined>(setting.speedMmPerS);
  const [powerPct, setPower] = useState<number | undefined>(setting.powerPct);
  const whole = speedMmPerS !== undefined && powerPct !== undefined;
  return (
    <div className="strip-why">
      <p className="strip-more">{words.asCutMore}</p>
      <div className="field-row">
        <QuantityField
          label={words.asCutSpeed}
          value={speedMmPerS}
          show={speedWords}
          parse={readCutSpeed}
          onChange={setSpeed}
        />
        <QuantityField
          label={words.asCutPower}
          value={powerPct}
          show={powerWords}
          parse={readCutPower}
          onChange={setPower}
        />
      </div>
      <div className="actions">
        <Action
          kind="plain"
          isDisabled={!whole}
          onPress={() => {
            if (whole) onSay(corrected(setting, speedMmPerS, powerPct));
          }}
        >
          {words.asCutSay}
        </Action>
        <Action kind="quiet" onPress={onBack}>
          {words.back}
        </Action>
      </div>
    </div>
  );
};

/** A power in corners above the corrected power would make no sense: it follows. */
const corrected = (setting: Setting, speedMmPerS: number, powerPct: number): Setting => ({
  ...setting,
  speedMmPerS,
  powerPct,
  ...(setting.minPowerPct === undefined
    ? {}
    : { minPowerPct: Math.min(setting.minPowerPct, powerPct) }),
});
