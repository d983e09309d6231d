import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { questionSetting, type SettingToQuestion } from './plausibility.ts';

const asked = (speedMmPerS: number, over: Partial<SettingToQuestion> = {}): SettingToQuestion => ({
  setting: { powerPct: 80, speedMmPerS, passes: 1 },
  material: 'bamboo',
  thicknessMm: 3,
  claim: 'cuts',
  ...over,
});

describe('questioning a typing slip', () => {
  // A published abstract on cutting bamboo (Wood Research) prints 3 mm, 48 W at the work of a 60 W tube, 30 m/min.
  it('questions a published row whose unit cannot be right, with watts and without', () => {
    const withWatts = questionSetting(asked(500, { watts: 48 }));
    expect(withWatts?.code).toBe('energy-too-little');
    expect(withWatts?.params).toMatchObject({ energyJPerMm2: 0.032, factor: 28 });
    expect(questionSetting(asked(500, { watts: 48, claim: 'tried' }))?.code).toBe(
      'energy-too-little',
    );
    expect(questionSetting(asked(500))?.code).toBe('speed-looks-too-fast');
    expect(questionSetting(asked(500, { claim: 'tried' }))?.code).toBe('speed-looks-too-fast');
  });

  it('goes by the watts of the tube where they are said', () => {
    // 40 W at 30 % cuts 3 mm plywood at 3 to 5 mm/s, 130 W at 10 to 17. From memory, common practice.
    const at = (speedMmPerS: number, nominalW: number) =>
      questionSetting({
        setting: { powerPct: 30, speedMmPerS, passes: 1 },
        material: 'plywood',
        thicknessMm: 3,
        nominalW,
        claim: 'cuts',
      })?.code;
    expect([at(4, 40), at(13, 130)]).toEqual([undefined, undefined]);
    expect(at(40, 40)).toBe('speed-looks-too-fast');
    expect(at(40, 130)).toBeUndefined();
    expect(at(1.5, 130)).toBe('speed-looks-too-slow');
    expect(at(1.5, 40)).toBeUndefined();
  });

  it('does not question the same row in mm/s', () => {
    expect(questionSetting(asked(30, { watts: 48 }))).toBeUndefined();
    expect(questionSetting(asked(30))).toBeUndefined();
  });

  // McMillin & Harry 1971: the measured limits themselves, 240 W.
  it.each([
    [6.35, 41.95],
    [25.4, 6.18],
  ])('does not question southern pine of %d mm at %d mm/s', (thicknessMm, speed) => {
    expect(
      questionSetting(asked(speed, { watts: 240, thicknessMm, material: 'pine' })),
    ).toBeUndefined();
  });

  it('questions a forgotten decimal point the other way', () => {
    expect(questionSetting(asked(0.5, { watts: 48 }))?.code).toBe('energy-too-much');
    expect(questionSetting(asked(0.5))?.code).toBe('speed-looks-too-slow');
  });

  // Settings at which sheets of a workshop came out: common practice, no source.
  it.each([
    [3, 10, 20],
    [3, 15, 25],
    [3, 20, 35],
    [5.25, 8, 40],
    [5.25, 12, 40],
  ])(
    'does not question plywood of %d mm that came out at %d mm/s and %d %%',
    (thicknessMm, speedMmPerS, powerPct) => {
      const setting = { powerPct, speedMmPerS, passes: 1 };
      expect(
        questionSetting(asked(0, { setting, thicknessMm, material: 'plywood' })),
      ).toBeUndefined();
    },
  );

  it('lets a test cell be further off than a setting that is said to cut', () => {
    const fast = {
      thicknessMm: 3,
      material: 'plywood',
      setting: { powerPct: 20, speedMmPerS: 80, passes: 1 },
    };
    expect(questionSetting(asked(0, { ...fast, claim: 'cuts' }))?.code).toBe(
      'speed-looks-too-fast',
    );
    expect(questionSetting(asked(0, { ...fast, claim: 'tried' }))).toBeUndefined();
  });

  it('thinks the same of double the power at double the speed', () => {
    const figure = fc.double({ min: 0.5, max: 500, noNaN: true });
    fc.assert(
      fc.property(
        figure,
        figure,
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        (watts, speed, thicknessMm) => {
          const one = questionSetting(asked(speed, { watts, thicknessMm }));
          const two = questionSetting(asked(2 * speed, { watts: 2 * watts, thicknessMm }));
          expect(two?.code).toBe(one?.code);
        },
      ),
    );
  });
});
