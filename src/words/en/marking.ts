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
} satisfies Sentences<MarkingCode>;
