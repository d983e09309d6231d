import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import type { z } from 'zod';
import type { Outcome } from '../../../core/problem.ts';
import { inchUnits, metricUnits } from '../../../core/units/unitPreference.ts';
import { airShape } from '../../../formats/saved/setting.ts';
import { focusRampShape } from '../../../formats/saved/focusTest.ts';
import { bedShape, machineShape } from '../../../formats/saved/machine.ts';
import { meteringShape } from '../../../formats/saved/metering.ts';
import { lengthMm, pct, speedMmPerS, thicknessMm } from '../../../formats/saved/bounds.ts';
import { showUnits } from '../../../words/texts.ts';
import * as readers from './readers.ts';

afterEach(() => showUnits(metricUnits));

type Reader = (text: string) => Outcome<number>;

const { shape: machine } = machineShape;
const { shape: bed } = bedShape;
const { shape: metering } = meteringShape;

/** Every reader beside what is stored of what it reads. */
const pairs: readonly (readonly [name: string, read: Reader, stored: z.ZodType])[] = [
  ['a size', readers.readSize, lengthMm],
  ['a thickness', readers.readThickness, thicknessMm],
  ['a gap to the edge', readers.readGap, bed.gapMm],
  ['a length on a ramp', readers.readLength, focusRampShape.shape.blockMm],
  ['a speed', readers.readCutSpeed, speedMmPerS],
  ['where a power ramp starts', readers.readJump, machine.powerRampStartMmPerS],
  ['a power', readers.readCutPower, pct.positive()],
  ['a corner power', readers.readPower, pct],
  ['watts', readers.readWatts, machine.nominalW],
  ['a current', readers.readCurrent, metering.readings.element.shape.currentMa],
  ['a rated current', readers.readRated, machine.ratedCurrentMa],
  ['a temperature', readers.readTemperature, metering.waterC],
];

describe.each(pairs)('%s', (_name, read, stored) => {
  it('is taken only where it can be stored, in either system of units', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.double({ min: 0, max: 1e7, noNaN: true }), fc.constantFrom(0, 0.001, 1e9)),
        fc.constantFrom(metricUnits, inchUnits),
        (figure, units) => {
          showUnits(units);
          const outcome = read(String(Number(figure.toPrecision(6))));
          if (outcome.ok) expect(stored.safeParse(outcome.value).success).toBe(true);
        },
      ),
    );
  });

  it('says between what it must lie, in the units of the page', () => {
    const outcome = read('900000000');
    expect(outcome).toMatchObject({ ok: false });
    if (!outcome.ok && outcome.problem.code === 'quantity-out-of-range') {
      expect(outcome.problem.params).toMatchObject({
        most: expect.stringMatching(/\d/) as unknown,
      });
    }
  });
});

describe('how a machine moves and blows', () => {
  it('is taken only where it can be stored', () => {
    const motion = machine.motion.unwrap().shape;
    for (const figure of ['0', '0.5', '1', '50', '51', '2000', '2001', '1000000', '1000001']) {
      const acceleration = readers.readAcceleration(figure);
      if (acceleration.ok)
        expect(motion.accelerationMmPerS2.safeParse(acceleration.value).success).toBe(true);
      const deviationMm = readers.readDeviation(figure);
      const corner = {
        rule: 'junction-deviation',
        deviationMm: deviationMm.ok ? deviationMm.value : 0,
      };
      expect(motion.corner.safeParse(corner).success).toBe(true);
      const kPa = readers.readPressure(figure);
      if (kPa.ok) expect(airShape.safeParse({ kPa: kPa.value }).success).toBe(true);
    }
    expect(readers.readAcceleration('1000001').ok).toBe(false);
    expect(readers.readDeviation('51').ok).toBe(false);
    expect(readers.readPressure('2001').ok).toBe(false);
  });
});
