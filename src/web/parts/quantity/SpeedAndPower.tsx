import { powerWords, speedWords } from '../../../words/en/figures.ts';
import { settingText as words } from '../../../words/en/screens/setting.ts';
import { QuantityField } from './QuantityField.tsx';
import { readCutPower, readCutSpeed } from './readers.ts';

/** What is known so far of a speed with its power setting. */
export interface SpokenSetting {
  readonly speedMmPerS?: number | undefined;
  readonly powerPct?: number | undefined;
}

export interface SpeedAndPowerProps extends SpokenSetting {
  /** What of it was said anew. */
  readonly onChange: (part: SpokenSetting) => void;
}

/** The two fields of a setting, side by side in whatever row they stand; either may be left empty. */
export const SpeedAndPower = ({ speedMmPerS, powerPct, onChange }: SpeedAndPowerProps) => (
  <>
    <QuantityField
      label={words.speed}
      optional
      value={speedMmPerS}
      show={speedWords}
      parse={readCutSpeed}
      onChange={(speed) => onChange({ speedMmPerS: speed })}
    />
    <QuantityField
      label={words.power}
      optional
      value={powerPct}
      show={powerWords}
      parse={readCutPower}
      onChange={(power) => onChange({ powerPct: power })}
    />
  </>
);
