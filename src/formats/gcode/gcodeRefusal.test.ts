import { describe, expect, it } from 'vitest';
import { demoRequest, requestWithoutTrusted } from '../../../test/fixtures/cardRequest.ts';
import { plainDialect } from '../../core/dialect/gcodeDialect.ts';
import { cardDrawing } from '../../core/card/cardDrawing.ts';
import type { CardRequest } from '../../core/card/cardRequest.ts';
import { designCard } from '../../core/card/designCard.ts';
import { gcodeRefusal } from './gcodeRefusal.ts';

const problemOf = (change: Partial<CardRequest>, request = demoRequest) => {
  const outcome = designCard({ ...request, ...change });
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return gcodeRefusal(cardDrawing(outcome.value.card), plainDialect);
};
const setting = { powerPct: 34, speedMmPerS: 12, passes: 1 };

describe('what RS-274 cannot carry (NIST IR 6556: one S word in force, M7/M8/M9 for coolant)', () => {
  it('is a power in corners, of any layer', () => {
    expect(problemOf({ vary: 'corners' })?.code).toBe('gcode-corner-power-not-carried');
    expect(problemOf({ trusted: { ...setting, minPowerPct: 20 } })?.params).toEqual({
      rung: 'window',
      powerPct: 34,
      minPowerPct: 20,
    });
    expect(problemOf({ rungs: [{ ...setting, minPowerPct: 34 }] })).toBeUndefined();
  });

  it('is a pressure that differs between layers, not one that all share', () => {
    const at = (kPa: number, speedMmPerS: number) => ({ ...setting, speedMmPerS, air: { kPa } });
    expect(problemOf({ rungs: [at(80, 12), at(120, 12)] }, requestWithoutTrusted)?.code).toBe(
      'gcode-pressure-not-carried',
    );
    expect(problemOf({ rungs: [at(80, 12), at(80, 15)] }, requestWithoutTrusted)).toBeUndefined();
  });

  it('is nothing of the other cards', () => {
    for (const vary of ['speed', 'power', 'speed-and-power', 'passes'] as const)
      expect(problemOf({ vary, sheetMm: [300, 200] })).toBeUndefined();
  });
});
