import { expect, it } from 'vitest';
import { aCard } from '../../../test/builders.ts';
import { actsOfCard } from './cardActs.ts';

const cutAt = (speedMmPerS: number, thicknessMm: number, air?: 'off', glows = true) =>
  actsOfCard(
    aCard({
      thicknessMm,
      rungs: [
        { letter: 'A', setting: { powerPct: 60, speedMmPerS, passes: 1, ...(air && { air }) } },
      ],
    }),
    glows,
  );

it('names what is a card’s own before what every card asks for', () => {
  expect(cutAt(12, 3)).toEqual(['unattended', 'fire', 'card', 'beforeCut', 'injury', 'always']);
  expect(cutAt(12, 3, 'off')[0]).toBe('airOff');
  expect(cutAt(2, 10)[0]).toBe('slowThick');
  expect(cutAt(2, 3)).not.toContain('slowThick');
  expect(cutAt(2, 10, undefined, false)).not.toContain('slowThick');
});
