import { cornerPowerPct, type Setting } from '../machine/setting.ts';
import type { PathLine, Toolpath } from './toolpath.ts';

/** What a line is cut with, as far as the file tells: a program tells all but the scale of S; a drawing spells it. */
export interface FileSetting {
  readonly speedMmPerS: number;
  /** Undefined where the scale of S is not known. */
  readonly powerPct?: number;
  readonly passes: number;
  /** Undefined where nothing is said of it. */
  readonly airOn?: boolean;
  /** As a name spells them: programs have no word for either. */
  readonly minPowerPct?: number;
  readonly airKpa?: number;
}

export const fileSetting = (toolpath: Toolpath, line: PathLine): FileSetting | undefined => {
  const { modal: told, spelt, passes } = line;
  if (told !== undefined) {
    const { sAtFullPower } = toolpath;
    return {
      speedMmPerS: told.speedMmPerS,
      ...(sAtFullPower === undefined ? {} : { powerPct: (100 * told.s) / sAtFullPower }),
      passes,
      airOn: told.air,
    };
  }
  if (spelt === undefined) return undefined;
  const said = asFileSetting(spelt.setting);
  return { ...said, passes: said.passes * passes };
};

/** A setting that was spelt, as a drawing tells it. */
export const asFileSetting = (setting: Setting): FileSetting => {
  const { powerPct, speedMmPerS, passes, air } = setting;
  return {
    speedMmPerS,
    powerPct,
    minPowerPct: cornerPowerPct(setting),
    passes,
    ...(air === undefined ? {} : { airOn: air !== 'off' }),
    ...(typeof air === 'object' ? { airKpa: air.kPa } : {}),
  };
};

/** Whether what is told is the setting that was meant: within what a file rounds away. */
export const isSetting = (told: FileSetting, meant: Setting): boolean =>
  Math.abs(told.speedMmPerS - meant.speedMmPerS) <= 0.002 * meant.speedMmPerS + 0.005 &&
  (told.powerPct === undefined || Math.abs(told.powerPct - meant.powerPct) <= 0.26) &&
  (told.minPowerPct === undefined || Math.abs(told.minPowerPct - cornerPowerPct(meant)) <= 0.26) &&
  told.passes === meant.passes &&
  (told.airKpa === undefined ||
    typeof meant.air !== 'object' ||
    Math.abs(told.airKpa - meant.air.kPa) <= 0.6) &&
  (told.airOn === undefined || meant.air === undefined || told.airOn === (meant.air !== 'off'));

/** For sentences: `14 mm/s 30 %`, `14 mm/s S300`. */
export const fileSettingWords = (told: FileSetting, line: PathLine, meant?: Setting): string =>
  [
    `${String(Number(told.speedMmPerS.toFixed(2)))} mm/s`,
    told.powerPct === undefined
      ? `S${String(line.modal?.s ?? 0)}`
      : `${String(Number(told.powerPct.toFixed(1)))}%`,
    ...(told.minPowerPct === undefined || told.minPowerPct === told.powerPct
      ? []
      : [`min ${String(Number(told.minPowerPct.toFixed(1)))}%`]),
    ...(told.passes === 1 ? [] : [`x${String(told.passes)}`]),
    // Air is worth a word only where it was meant to be one way.
    ...(told.airKpa === undefined ? [] : [`${String(Number(told.airKpa.toFixed(1)))} kPa`]),
    ...(told.airOn === false && meant?.air !== undefined ? ['no air'] : []),
  ].join(' ');

/** Line energy in per cent of power setting times passes over mm/s; undefined where the power is not known. */
export const energyOf = (told: FileSetting): number | undefined =>
  told.powerPct === undefined ? undefined : (told.powerPct * told.passes) / told.speedMmPerS;
