import { describe, expect, it } from 'vitest';

import { demoRequest } from '../../../test/fixtures/cardRequest.ts';
import { undescribedMachine, type Machine } from '../machine/machine.ts';
import type { Card } from './card.ts';
import { cardTime } from './cardTime.ts';
import { designCard } from './designCard.ts';
import { mistypedByTime } from './mistypedByTime.ts';

const machine: Machine = {
  ...undescribedMachine,
  motion: {
    accelerationMmPerS2: 800,
    corner: { rule: 'junction-deviation', deviationMm: 0.02 },
    travelSpeedMmPerS: 200,
    lineDelayS: 0.03,
    timeErrorPct: 1.2,
  },
};

const card: Card = (() => {
  const outcome = designCard({ ...demoRequest, cellsEach: 3, sheetMm: [260, 200] });
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value.card;
})();

/** How long the card takes when one rung is typed with another speed. */
const secondsWith = (letter: string, speedMmPerS: number): number =>
  cardTime(
    {
      ...card,
      rungs: card.rungs.map((rung) =>
        rung.letter === letter ? { ...rung, setting: { ...rung.setting, speedMmPerS } } : rung,
      ),
    },
    machine.motion,
  ).seconds;

const right = cardTime(card, machine.motion).seconds;

describe('what a told time says of the typing', () => {
  it('is nothing where it is the time that was to be expected', () => {
    expect(mistypedByTime(card, Math.round(right), { machine })).toMatchObject({
      verdict: 'as-expected',
      suspects: [],
    });
  });

  it('names a rung whose speed lost its first digit', () => {
    const slow = card.rungs.find(({ setting }) => setting.speedMmPerS >= 10);
    if (slow === undefined) throw new Error('no rung of two digits');
    const dropped = Number(String(slow.setting.speedMmPerS).slice(1));
    const told = Math.round(secondsWith(slow.letter, dropped > 0 ? dropped : 1));
    const { verdict, suspects } = mistypedByTime(card, told, { machine });
    expect(verdict).not.toBe('as-expected');
    expect(suspects.map(({ label }) => label)).toContain(slow.letter);
    for (const { probability } of suspects) expect(probability).toBeLessThanOrEqual(1);
  });

  it('names the marks where scoring crept', () => {
    const { seconds } = cardTime(
      { ...card, scoring: { powerPct: 14, speedMmPerS: 9, passes: 1 } },
      machine.motion,
    );
    const { verdict, suspects } = mistypedByTime(card, Math.round(seconds), { machine });
    expect(verdict).toBe('mistyped');
    expect(suspects[0]).toMatchObject({
      label: 'marks',
      meant: { speedMmPerS: 90 },
      probably: { speedMmPerS: 9 },
      how: 'digit-dropped',
    });
  });

  it('suspects what stood there from the card before', () => {
    const before: Card = {
      ...card,
      rungs: card.rungs.map((rung) => ({
        ...rung,
        setting: { ...rung.setting, speedMmPerS: 3.3 },
      })),
    };
    const [first] = card.rungs;
    const told = Math.round(secondsWith(first?.letter ?? 'A', 3.3));
    const { suspects } = mistypedByTime(card, told, { machine, before });
    expect(suspects.some(({ how }) => how === 'not-changed')).toBe(true);
  });

  it('blames no rung for a time that no slip explains', () => {
    const { verdict, suspects } = mistypedByTime(card, 0.7 * right, { machine });
    expect(verdict).toBe('unclear');
    expect(suspects).toEqual([]);
    expect(mistypedByTime(card, 1e7, { machine }).verdict).toBe('unclear');
  });

  it('says that it cannot tell where nobody knows how the machine moves', () => {
    expect(mistypedByTime(card, 3 * right, { machine: undescribedMachine }).verdict).toBe(
      'motion-unknown',
    );
  });
});
