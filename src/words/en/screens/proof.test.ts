import { expect, it } from 'vitest';
import { cornersSentences } from './proof.ts';

it('names no power for the corners but that at full speed while nobody knows where the ramp starts', () => {
  const said = cornersSentences({ rampStart: 'unknown', nowPct: 30, places: 120 }, 30);
  // As the job sheet of a card has it: the power again.
  expect(said.join(' ').match(/\d+\u202f%/g)).toEqual(['30\u202f%']);
  expect(said.join(' ')).toMatch(/manual.*corners card/);
  const less = cornersSentences({ rampStart: 'unknown', nowPct: 10, places: 120 }, 30);
  expect(less.at(-1)).toMatch(/10\u202f%.*at worst all of it/);
});
