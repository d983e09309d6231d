import type { CardDrawing } from '../../core/card/cardDrawing.ts';
import { powerInCornersPct, type Setting } from '../../core/machine/setting.ts';
import type { Problem } from '../../core/problem.ts';
import type { DrawingCode } from '../drawingCodes.ts';

/**
 * Why a drawing cannot be said in G-code; undefined where it can. RS-274 has one S for a move and a valve for the air, so
 * it carries neither a power in corners nor the pressure at a gauge: a program that left them out would cut every cell
 * alike beside words that say otherwise.
 */
export const gcodeRefusal = ({ layers }: CardDrawing): Problem | undefined => {
  const without = layers.find(({ setting }) => setting === undefined);
  if (without !== undefined)
    return problemOf('gcode-layer-without-setting', { layer: without.kind });
  const settings = layers.flatMap(({ setting, rung, kind }) =>
    setting === undefined ? [] : [{ setting, name: rung ?? kind }],
  );
  const corners = settings.find(({ setting }) => powerInCornersPct(setting) !== setting.powerPct);
  if (corners !== undefined) {
    const { powerPct } = corners.setting;
    const minPowerPct = powerInCornersPct(corners.setting);
    return problemOf('gcode-corner-power-not-carried', {
      rung: corners.name,
      powerPct,
      minPowerPct,
    });
  }
  const pressures = settings.filter(({ setting }) => pressureOf(setting) !== undefined);
  const [first] = pressures;
  const other = pressures.find(
    ({ setting }) => first !== undefined && pressureOf(setting) !== pressureOf(first.setting),
  );
  return first === undefined || other === undefined
    ? undefined
    : problemOf('gcode-pressure-not-carried', {
        one: first.name,
        oneKpa: pressureOf(first.setting) ?? 0,
        other: other.name,
        otherKpa: pressureOf(other.setting) ?? 0,
      });
};

const pressureOf = ({ air }: Setting): number | undefined =>
  typeof air === 'object' ? air.kPa : undefined;

const problemOf = (code: DrawingCode, params: Problem['params']): Problem => ({ code, params });
