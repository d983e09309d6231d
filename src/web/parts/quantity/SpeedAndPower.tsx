import { powerWords, speedWords, settingText as words } from '../../../words/texts.ts';
import { QuantityField } from './QuantityField.tsx';
import { readCutPower, readCutSpeed } from './readers.ts';

/** What is known so far of a speed with its power setting. */
export interface SpokenSetting {
  readonly speedMmPerS?: number | undefined;
  readonly powerPct?: number | undefined;
}

export interface SpeedAndPowerProps extends SpokenSetting {
  /** Absent: they are called speed and power setting. */
  readonly labels?: { readonly speed: string; readonly power: string };
  /** Whether either may be left empty. */
  readonly isOptional?: boolean;
  /** What of it was said anew. */
  readonly onChange: (part: SpokenSetting) => void;
}

/** The two fields of a setting, side by side in whatever row they stand. */
export const SpeedAndPower = ({
  speedMmPerS,
  powerPct,
  labels = words,
  isOptional = false,
  onChange,
}: SpeedAndPowerProps) => (
  <>
    <QuantityField
      label={labels.speed}
      optional={isOptional}
      value={speedMmPerS}
      show={speedWords}
      parse={readCutSpeed}
      onChange={(speed) => onChange({ speedMmPerS: speed })}
    />
    <QuantityField
      label={labels.power}
      optional={isOptional}
      value={powerPct}
      show={powerWords}
      parse={readCutPower}
      onChange={(power) => onChange({ powerPct: power })}
    />
  </>
);
