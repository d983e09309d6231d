import type { CompareReasonCode, CompareRemarkCode } from '../../core/problems/compare.ts';
import type { Sentences } from '../shape/sentence.ts';

/** What is said of two conditions set beside each other. */
export const compareWords = {
  'compare-side-unread': {
    message: (p) => `Nothing of the ${p.side} side has been read.`,
    remedy: () => 'Read at least one shape that was cut under each condition.',
  },
  'compare-piece-on-both-sides': {
    message: () => 'A card stands on both sides.',
    remedy: () => 'Let each card, or each air of a card, stand on one side only.',
  },
  'compare-two-materials': {
    message: (p) =>
      `The sides are of two materials, ${p.first} and ${p.second}: those are not two conditions of one cut.`,
    remedy: () => 'Choose cards of one material.',
  },
  'compare-not-settled': {
    message: () => 'The calculation did not settle on an answer.',
    remedy: () =>
      'Look for a mistyped speed or power on either side, or compare cards that were cut at like settings.',
  },
  'compare-own-sheets': {
    message: () =>
      'Each condition was cut on a sheet of its own, so part of the difference may be the sheets: that is in the figure, and keeps it wide.',
    remedy: () => 'Both on one sheet would tell more.',
  },
  'compare-partly-own-sheets': {
    message: () =>
      'Some of the shapes lie on sheets that were cut under one condition only; they tell less than those on a common sheet.',
    remedy: () => 'Cut further shapes of both conditions on one sheet.',
  },
  'compare-batches-too': {
    message: () =>
      'The batches are not the same on both sides, so part of the difference may be the batch: that is in the figure, and keeps it wide.',
    remedy: () => 'Cut both conditions on one batch, best on one sheet.',
  },
  'compare-differs-too': {
    message: (p) =>
      `Beside what is compared the sides differ in ${p.what}: the figure cannot tell the one from the other.`,
    remedy: () => 'Cut both sides alike in all but one thing.',
  },
  'compare-mixed-side': {
    message: (p) => `The shapes of one side were not all cut with the same ${p.what}.`,
    remedy: () => 'Leave out the cards that do not belong to the condition.',
  },
  'compare-all-out': {
    message: () => 'Everything came out under both conditions, so nothing tells them apart.',
    remedy: () => 'Cut both again about a fifth faster.',
  },
  'compare-none-out': {
    message: () => 'Nothing came out under either condition, so little tells them apart.',
    remedy: () => 'Cut both again about a fifth slower.',
  },
  'compare-rests-on-prior': {
    message: () =>
      'So few shapes narrow the difference little: what was believed beforehand, two conditions in three within 16\u202f% of each other, still weighs in the figure.',
    remedy: () =>
      'Cut both conditions on one sheet, near the speed where half the shapes come out.',
  },
  'compare-plain-power': {
    message: () =>
      'Two machines are compared at the power setting that is typed, not at equal tube current.',
    remedy: () => 'Read the milliammeter of both to know what each setting draws.',
  },
} satisfies Sentences<CompareReasonCode | CompareRemarkCode>;
