import type { CardDrawing } from '../../core/card/cardDrawing.ts';
import type { GcodeDialect } from '../../core/dialect/gcodeDialect.ts';
import { ownLinesProblem } from '../../core/dialect/ownLines.ts';
import { cornerPowerPct } from '../../core/machine/setting.ts';
import { problemOf, type Problem } from '../../core/problem.ts';

/**
 * Why a drawing cannot be said in G-code; undefined where it can. RS-274 has one S for a move and a valve for the air, so
 * it carries neither a power in corners nor the pressure at a gauge: a program that left them out would cut every cell
 * alike beside words that say otherwise. Nor is there a program with lines of the machine’s own that nobody can answer for.
 */
export const gcodeRefusal = (
  { layers }: CardDrawing,
  dialect: GcodeDialect,
): Problem | undefined => {
  const ofOwn = ownLinesProblem(dialect);
  if (ofOwn !== undefined) return ofOwn;
  const without = layers.find(({ setting }) => setting === undefined);
  if (without !== undefined)
    return problemOf('gcode-layer-without-setting', { layer: without.kind });
  const settings = layers.flatMap(({ setting, rung, kind }) =>
    setting === undefined ? [] : [{ setting, name: rung ?? kind }],
  );
  const corners = settings.find(({ setting }) => cornerPowerPct(setting) !== setting.powerPct);
  if (corners !== undefined) {
    const { powerPct } = corners.setting;
    const minPowerPct = cornerPowerPct(corners.setting);
    return problemOf('gcode-corner-power-not-carried', {
      rung: corners.name,
      powerPct,
      minPowerPct,
    });
  }
  const pressures = settings.flatMap(({ setting: { air }, name }) =>
    typeof air === 'object' ? [{ name, kPa: air.kPa }] : [],
  );
  const [first] = pressures;
  const other = pressures.find(({ kPa }) => kPa !== first?.kPa);
  return first === undefined || other === undefined
    ? undefined
    : problemOf('gcode-pressure-not-carried', {
        one: first.name,
        oneKpa: first.kPa,
        other: other.name,
        otherKpa: other.kPa,
      });
};
