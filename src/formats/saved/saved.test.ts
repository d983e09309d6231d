import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  sampleCard,
  sampleEntry,
  sampleEvent,
  sampleStudy,
  sampleTally,
} from '../../../test/samples/studies.ts';
import { cardShape } from './card.ts';
import { machineShape } from './machine.ts';
import { provenSettingShape } from './provenSetting.ts';
import { settingShape } from './setting.ts';
import { studyShape } from './study.ts';
import { recordedTallyShape } from './tally.ts';

const machine = { maxPowerPct: 80, speedRangeMmPerS: [1, 100] };

describe('what can be saved', () => {
  it('comes back from JSON as it was', () => {
    const study = sampleStudy('s1', {
      cards: [sampleCard()],
      events: [sampleEvent('e1')],
      tallies: [sampleTally('t1')],
      habit: { powerPct: 30, speedMmPerS: 14, comesOut: 'always' },
    });
    expect(studyShape.parse(JSON.parse(JSON.stringify(study)))).toEqual(study);
    const entry = sampleEntry('b1', { note: 'two\nlines', personsChoice: 'a rush order' });
    expect(provenSettingShape.parse(JSON.parse(JSON.stringify(entry)))).toEqual(entry);
  });

  it('takes any setting within its bounds, and none without', () => {
    const setting = fc.record({
      powerPct: fc.double({ min: 0, max: 100, noNaN: true }),
      speedMmPerS: fc.double({ min: 0.05, max: 5000, noNaN: true }),
      passes: fc.integer({ min: 1, max: 50 }),
    });
    fc.assert(
      fc.property(setting, fc.double({ min: 0, max: 100, noNaN: true }), (some, minPowerPct) => {
        expect(settingShape.safeParse(some).success).toBe(true);
        expect(settingShape.safeParse({ ...some, minPowerPct }).success).toBe(
          minPowerPct <= some.powerPct,
        );
        for (const powerPct of [-1, 101, Number.NaN, Number.POSITIVE_INFINITY, '40'])
          expect(settingShape.safeParse({ ...some, powerPct }).success).toBe(false);
      }),
    );
  });

  it.each([
    [
      'tube points that fall',
      {
        tubePoints: [
          { powerPct: 30, currentMa: 9 },
          { powerPct: 20, currentMa: 6 },
        ],
      },
    ],
    [
      'two tube points at one power',
      {
        tubePoints: [
          { powerPct: 30, currentMa: 9 },
          { powerPct: 30, currentMa: 9 },
        ],
      },
    ],
    ['a speed range upside down', { speedRangeMmPerS: [100, 1] }],
    ['no power at all', { maxPowerPct: 0 }],
    ['a tube sold as 40 kW', { nominalW: 40_000 }],
    ['a key that means nothing', { watts: 60 }],
  ])('refuses a machine with %s', (_, over) => {
    expect(machineShape.safeParse({ ...machine, nominalW: 60 }).success).toBe(true);
    expect(machineShape.safeParse({ ...machine, ...over }).success).toBe(false);
  });

  it.each([
    ['two rungs of one letter', { rungs: [...sampleCard().rungs, ...sampleCard().rungs] }],
    ['two cells of one name', { cells: [...sampleCard().cells, ...sampleCard().cells] }],
    ['a cell on a rung that is not there', { cells: [{ id: 'C1', rung: 'C', xMm: 0, yMm: 0 }] }],
    ['no cells', { cells: [] }],
    ['a code that cannot be cut', { code: 'k7q!' }],
    ['another version', { version: 2 }],
  ])('refuses a card with %s', (_, over) => {
    expect(cardShape.safeParse(sampleCard()).success).toBe(true);
    expect(cardShape.safeParse({ ...sampleCard(), ...over }).success).toBe(false);
  });

  it('refuses a tally of nothing, of parts of parts, and of less than nothing', () => {
    const tally = sampleTally('t1');
    const none = { out: 0, hangs: 0, stays: 0, spoilt: 0 };
    expect(recordedTallyShape.safeParse({ ...tally, ...none }).success).toBe(false);
    expect(recordedTallyShape.safeParse({ ...tally, ...none, spoilt: 1 }).success).toBe(true);
    expect(recordedTallyShape.safeParse({ ...tally, out: 1.5 }).success).toBe(false);
    expect(recordedTallyShape.safeParse({ ...tally, hangs: -1 }).success).toBe(false);
  });
});
