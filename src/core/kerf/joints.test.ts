import { param } from '../../../test/samples/param.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { jointKinds, jointsFrom, slotFits, type Joints, type SlotFit } from './joints.ts';

const found = (
  slots: readonly (readonly [number, SlotFit])[],
  known: { tongueMm: number; kerfMm?: number } = { tongueMm: 3 },
): Joints => {
  const outcome = jointsFrom(
    slots.map(([drawnMm, fit]) => ({ drawnMm, fit })),
    known,
  );
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value;
};

const card = [
  [2.6, 'no'],
  [2.7, 'press'],
  [2.8, 'snug'],
  [2.9, 'slip'],
  [3, 'loose'],
] as const;

describe('joints from a card of slots', () => {
  it('draw the slot that went so, half a step to either side', () => {
    const { joints, remarks } = found(card, { tongueMm: 3, kerfMm: 0.2 });
    expect(joints.map(({ kind }) => kind)).toEqual(['press', 'snug', 'slip']);
    const [press, snug] = joints;
    expect(press).toMatchObject({ isSeen: true });
    expect(press?.drawMm).toBeCloseTo(2.7, 12);
    expect(press?.toMm).toBeCloseTo(0.05, 12);
    // The beam opens a slot of 2.8 to 3.0: neither play nor press.
    expect(snug?.allowanceMm).toBeCloseTo(-0.2, 12);
    expect(snug?.clearanceMm).toBeCloseTo(0, 12);
    expect(remarks).toEqual([]);
  });

  it('say what was not seen: between two slots with a guess, beyond them not at all', () => {
    const { joints, remarks } = found([
      [2.6, 'no'],
      [2.8, 'snug'],
    ]);
    expect(joints.map(({ kind, isSeen }) => [kind, isSeen])).toEqual([
      ['press', false],
      ['snug', true],
    ]);
    expect(joints[0]?.drawMm).toBeCloseTo(2.7, 12);
    expect(remarks.map((one) => [one.code, param(one, 'kind')])).toEqual([
      ['joint-between-slots', 'press'],
      ['joint-not-seen', 'slip'],
    ]);
  });

  it('refuse a wider slot that went tighter, and a card of one slot', () => {
    expect(
      jointsFrom(
        [
          { drawnMm: 2.8, fit: 'slip' },
          { drawnMm: 2.9, fit: 'press' },
        ],
        { tongueMm: 3 },
      ),
    ).toMatchObject({ problem: { code: 'joint-slots-mixed' } });
    expect(jointsFrom([{ drawnMm: 2.8, fit: 'slip' }], { tongueMm: 3 })).toMatchObject({
      problem: { code: 'joint-slots-unread' },
    });
  });

  it('are never drawn wider for a tighter joint, and the order of the slots does not matter', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 200, max: 400 }), fc.constantFrom(...slotFits)), {
          minLength: 2,
          maxLength: 12,
        }),
        (drawn) => {
          const widths = drawn.map(([hundredths]) => hundredths / 100).sort((a, b) => a - b);
          const fits = drawn
            .map(([, fit]) => fit)
            .sort((a, b) => slotFits.indexOf(a) - slotFits.indexOf(b));
          const slots = widths.map((width, i) => [width, fits[i] ?? 'no'] as const);
          const { joints } = found(slots);
          expect(found(slots.toReversed()).joints).toEqual(joints);
          const order = joints.map(({ kind }) => jointKinds.indexOf(kind));
          expect(order).toEqual([...order].sort((a, b) => a - b));
          joints.forEach(({ drawMm, allowanceMm }, i) => {
            expect(drawMm).toBeGreaterThanOrEqual((joints[i - 1]?.drawMm ?? 0) - 1e-9);
            expect(allowanceMm).toBeCloseTo(drawMm - 3, 9);
          });
        },
      ),
    );
  });
});
