import { airKey, type Air } from './air.ts';

/** What a person types into the machine's control program for one rung. */
export interface Setting {
  /** Power at full speed: the figure sent to the machine, 0–100 %. Neither watts nor per cent of watts. */
  readonly powerPct: number;
  /** Power in corners, 0–100 %. Absent: equal to `powerPct`. */
  readonly minPowerPct?: number;
  readonly speedMmPerS: number;
  readonly passes: number;
  readonly air?: Air;
}

/** Power in corners: that at full speed where nothing else was said. */
export const cornerPowerPct = ({
  powerPct,
  minPowerPct = powerPct,
}: Pick<Setting, 'powerPct' | 'minPowerPct'>): number => minPowerPct;

/** A text that is equal for settings that a person would type alike. */
export const settingKey = (setting: Setting): string =>
  [
    setting.powerPct,
    cornerPowerPct(setting),
    setting.speedMmPerS,
    setting.passes,
    airKey(setting.air),
  ].join('/');
