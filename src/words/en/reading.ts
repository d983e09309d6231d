import type { ReadingCode } from '../../core/problems/reading.ts';
import type { Sentences } from '../shape/sentence.ts';

export const readingWords = {
  'event-for-unknown-cell': {
    message: (p) => `Something was said of shape ${p.cell}, which is not on card ${p.card}.`,
    remedy: () => 'It was left out. Check that the card shown is the card in your hand.',
  },
  'undo-of-unknown-event': {
    message: (p) => `Someone took back a step (${p.event}) that card ${p.card} does not hold.`,
    remedy: () => 'It was left out. If the reading looks wrong, tap the shape again.',
  },
} satisfies Sentences<ReadingCode>;
