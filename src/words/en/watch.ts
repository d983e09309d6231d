import type { WatchCode } from '../../core/problems/watch.ts';
import type { Sentences } from '../shape/sentence.ts';

/** Why a check strip cannot be cut. */
export const watchWords = {
  'strip-needs-batch': {
    message: (p) =>
      p.kept === ''
        ? 'A strip in a new batch needs that batch’s name.'
        : `The kept setting is of the batch “${p.kept}”; a new batch needs another name.`,
    remedy: () =>
      'Type what stands on the delivery note, or the day it came. For the reference sheet choose that instead.',
  },
  'strip-too-narrow': {
    message: (p) =>
      `Between ${p.leastMmPerS} and ${p.mostMmPerS} mm/s this machine has no room for the speeds of a strip.`,
    remedy: () => 'Cut a card instead, at a power for which the speeds lie within the machine’s.',
  },
} satisfies Sentences<WatchCode>;
