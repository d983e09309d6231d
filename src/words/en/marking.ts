import type { MarkingCode } from '../../core/problems/marking.ts';
import type { Sentences } from '../shape/sentence.ts';

/** What stands against marks beside a cut. */
export const markingWords = {
  'marks-no-room': {
    message: () =>
      'On this sheet even the least steady power at the fastest speed may cut where it should only mark.',
    remedy: () =>
      'Try a wider line spacing for engraving. Enter the tube readings of the machine and its real top speed, if they are missing.',
  },
  'strip-too-few-steps': {
    message: (p) =>
      `Only ${p.steps} steps differ between what the tube gives steadily and what may come through: too few for a strip.`,
    remedy: () =>
      'Try a wider line spacing for shades. Enter the tube readings of the machine, its real top speed and how it moves, if they are missing.',
  },
  'tone-too-few': {
    message: (p) => `A curve of shades takes at least ${p.least} of them.`,
    remedy: () => 'Enter how light more of the shades came out.',
  },
  'tone-too-flat': {
    message: (p) =>
      `From the gentlest shade to the strongest the lightness goes ${p.rangeL} one way, and less than ${p.leastL} is hardly told from chance.`,
    remedy: () =>
      'Look whether each figure stands at its own letter. Try closer lines, or a strip on the other face.',
  },
} satisfies Sentences<MarkingCode>;
