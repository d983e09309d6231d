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

it('says what the air off does where only marks, window or outline are cut without it', () => {
  const airOff = { powerPct: 8, speedMmPerS: 90, passes: 1, air: 'off' } as const;
  expect(actsOfCard(aCard({ scoring: airOff }), false)[0]).toBe('airOff');
  expect(actsOfCard(aCard({ trusted: airOff }), false)[0]).toBe('airOff');
  // A mark goes through nothing that could glow on.
  const slow = { ...airOff, air: 'pump', speedMmPerS: 1 } as const;
  expect(actsOfCard(aCard({ thicknessMm: 10, scoring: slow }), true)).not.toContain('slowThick');
  expect(actsOfCard(aCard({ thicknessMm: 10, trusted: slow }), true)[0]).toBe('slowThick');
});
