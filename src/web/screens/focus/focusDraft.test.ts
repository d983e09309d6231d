import { describe, expect, it } from 'vitest';
import { inchUnits, metricUnits } from '../../../core/units/unitPreference.ts';
import { showUnits } from '../../../words/texts.ts';
import {
  emptyFocusDraft,
  focusTestFrom,
  readFocusDraft,
  readingsIn,
  type FocusDraft,
} from './focusDraft.ts';

const lines = [
  { letter: 'A', setting: { powerPct: 14, speedMmPerS: 30, passes: 1 }, dose: 1 },
  { letter: 'B', setting: { powerPct: 14, speedMmPerS: 43, passes: 1 }, dose: 0.7 },
];
const draft = (over: Partial<FocusDraft>): FocusDraft => ({ ...emptyFocusDraft, ...over });

describe('what was read off a ramp', () => {
  it('counts a line once both its ends are said, be it that it runs off the strip', () => {
    const fades = {
      A: { from: { mm: 20 }, to: { runsOff: true } },
      B: { from: { mm: 30 }, to: {} },
    };
    expect(readingsIn(draft({ fades }), lines)).toEqual({
      ok: true,
      value: { kind: 'fades', lines: [{ fromMm: 20, toMm: null, dose: 1 }] },
    });
    expect(readingsIn(draft({}), lines)).toEqual({ ok: true, value: undefined });
  });

  it('reads widths as people write them, and says which line is none', () => {
    const widths = '30 mm 0.42 mm\n\n 40: 0,31\n50 mm  0.25 mm';
    expect(readingsIn(draft({ kind: 'widths', widths }), lines)).toMatchObject({
      ok: true,
      value: {
        widths: [
          { alongMm: 30, widthMm: 0.42 },
          { alongMm: 40, widthMm: 0.31 },
          { alongMm: 50, widthMm: 0.25 },
        ],
      },
    });
    for (const wrong of ['30', '30 mm none', '30 0'])
      expect(readingsIn(draft({ kind: 'widths', widths: wrong }), lines)).toMatchObject({
        ok: false,
        problem: { code: 'line-not-a-width' },
      });
    showUnits(inchUnits);
    expect(readingsIn(draft({ kind: 'widths', widths: '2 0.01' }), lines)).toMatchObject({
      value: { widths: [{ alongMm: 50.8, widthMm: 0.254 }] },
    });
    showUnits(metricUnits);
  });

  it('is read back as it was written; what is damaged is passed over', () => {
    const full = draft({ gaugeMm: 7, fades: { A: { from: { mm: 20 }, to: { runsOff: true } } } });
    expect(readFocusDraft(JSON.parse(JSON.stringify(full)))).toEqual(full);
    expect(readFocusDraft({ ramp: {} })).toBeUndefined();
  });

  it('is a test once there are readings', () => {
    expect(focusTestFrom(draft({}), undefined, 'left')).toBeUndefined();
    const readings = { kind: 'widths', widths: [] } as const;
    expect(focusTestFrom(draft({ gaugeMm: 7 }), readings, 'left')).toEqual({
      machineId: 'left',
      ramp: emptyFocusDraft.ramp,
      readings,
      gaugeMm: 7,
    });
  });
});
