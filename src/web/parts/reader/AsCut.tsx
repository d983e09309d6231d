import type { Setting } from '../../../core/machine/setting.ts';
import { readingText as words } from '../../../words/texts.ts';
import { useDraft } from '../../state/useDraft.ts';
import { Action } from '../action/Action.tsx';
import { SpeedAndPower, type SpokenSetting } from '../quantity/SpeedAndPower.tsx';

export interface AsCutProps {
  /** Of the shape: what is typed is kept under it. */
  readonly name: string;
  readonly setting: Setting;
  readonly onSay: (setting: Setting) => void;
  readonly onBack: () => void;
}

/** Corrects what a cell was really cut at. */
export const AsCut = ({ name, setting, onSay, onBack }: AsCutProps) => {
  const [spoken, setSpoken, sent] = useDraft<SpokenSetting>({
    name: `as-cut.${name}`,
    initial: setting,
  });
  const { speedMmPerS, powerPct } = spoken;
  const whole = speedMmPerS !== undefined && powerPct !== undefined;
  return (
    <div className="strip-why">
      <p className="strip-more">{words.asCutMore}</p>
      <div className="field-row">
        <SpeedAndPower
          speedMmPerS={speedMmPerS}
          powerPct={powerPct}
          labels={{ speed: words.asCutSpeed, power: words.asCutPower }}
          onChange={(part) => setSpoken({ ...spoken, ...part })}
        />
      </div>
      <div className="actions">
        <Action
          kind="plain"
          keepsTyped
          isDisabled={!whole}
          onPress={() => {
            if (!whole) return;
            sent();
            onSay(corrected(setting, speedMmPerS, powerPct));
          }}
        >
          {words.asCutSay}
        </Action>
        <Action
          kind="quiet"
          onPress={() => {
            sent();
            onBack();
          }}
        >
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
