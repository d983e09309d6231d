import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Setting } from '../machine/setting.ts';
import { areWordsOf, cellWordLines, cellWords, layerName, parseLayerName } from './settingWords.ts';

const tenths = (most: number) => fc.integer({ min: 1, max: most * 10 }).map((n) => n / 10);
const settings: fc.Arbitrary<Setting> = fc
  .record(
    {
      powerPct: tenths(100),
      speedMmPerS: tenths(500),
      passes: fc.integer({ min: 1, max: 9 }),
      minPowerPct: tenths(100),
      air: fc.constantFrom('off' as const, 'pump' as const, { kPa: 137.9 }),
    },
    { requiredKeys: ['powerPct', 'speedMmPerS', 'passes'] },
  )
  .filter(({ powerPct, minPowerPct }) => minPowerPct === undefined || minPowerPct < powerPct);

describe('the words beside a cell', () => {
  it('say speed and power, and only what else is unusual', () => {
    expect(cellWords({ powerPct: 30, speedMmPerS: 14, passes: 1 })).toBe('14 mm/s 30%');
    const unusual: Setting = {
      powerPct: 30,
      minPowerPct: 22,
      speedMmPerS: 4.2,
      passes: 2,
      air: 'off',
    };
    expect(cellWordLines(unusual)).toEqual(['4.2 mm/s', '30% c22% x2 no air']);
    expect(cellWords(unusual)).toBe('4.2 mm/s 30% corner 22% x2 no air');
    expect(areWordsOf('4.2 mm/s 30% corner 22% x2 no air', unusual)).toBe(true);
    expect(areWordsOf('4.2 mm/s 30% min 22% x2 no air', unusual)).toBe(true);
    expect(areWordsOf('4.2 mm/s 30% min 21% x2 no air', unusual)).toBe(false);
  });

  it('differ where settings differ in what can vary on one card', () => {
    fc.assert(
      fc.property(settings, settings, (a, b) => {
        const same =
          a.powerPct === b.powerPct &&
          a.speedMmPerS === b.speedMmPerS &&
          a.passes === b.passes &&
          a.minPowerPct === b.minPowerPct;
        if (!same) expect(cellWords(a)).not.toBe(cellWords(b));
      }),
    );
  });
});

describe('the name of a layer', () => {
  it('spells the setting in signs that drawing formats allow', () => {
    expect(layerName('A', { powerPct: 30, speedMmPerS: 14, passes: 1, air: 'pump' })).toBe(
      'A 14.0mmps 30pct corner30 air-on',
    );
    fc.assert(
      fc.property(settings, (setting) => {
        expect(layerName('A', setting)).toMatch(/^[A-Za-z0-9 .-]+$/);
      }),
    );
  });

  it('is read in its older spelling too, and written in the newer', () => {
    fc.assert(
      fc.property(settings, (setting) => {
        const name = layerName('A', setting);
        expect(name).toMatch(/ corner\d/);
        const read = parseLayerName(name.replace(' corner', ' min'));
        expect(read).toEqual({ label: 'A', setting });
        expect(layerName('A', read?.setting ?? setting)).toBe(name);
      }),
    );
  });

  it('can be read back whole, also where a program has put underscores for spaces', () => {
    fc.assert(
      fc.property(settings, fc.constantFrom('A', 'marks', 'T'), (setting, label) => {
        const name = layerName(label, setting);
        expect(parseLayerName(name)).toEqual({ label, setting });
        expect(parseLayerName(name.replaceAll(' ', '_'))).toEqual({ label, setting });
      }),
    );
    for (const name of ['', 'layer 1', 'A 14mmps', 'A 1e9mmps 30pct corner30', 'A 14 mm/s 30%']) {
      expect(parseLayerName(name)).toBeUndefined();
    }
  });
});
