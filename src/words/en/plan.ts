import type { PlanCode } from '../../core/problems/plan.ts';
import type { Sentences } from '../shape/sentence.ts';

const speed = (speedMmPerS: string): string => `${speedMmPerS} mm/s`;

/** Why an order's next act is what it is. */
export const planWords = {
  'plan-card-first': {
    message: (p) =>
      `Cut this small card first: too little is known of this sheet, and the card saves about ${p.savesMinutes} minutes on the order.`,
    remedy: () => 'Read it and ask again: the first sheet follows.',
  },
  'plan-first-sheet': {
    message: (p) =>
      `What is known so far carries ${speed(p.speedMmPerS)}: about ${p.notOutOf100} in 100 sound parts should not come out.`,
    remedy: () => 'Count it and ask again: the next setting follows from the count.',
  },
  'plan-faster': {
    message: (p) =>
      `The sheets counted so far allow ${speed(p.speedMmPerS)} instead of ${speed(p.heldMmPerS)}: about ${p.notOutOf100} in 100 sound parts should not come out.`,
    remedy: () => 'Type the new speed, cut the sheet and count it.',
  },
  'plan-slower': {
    message: (p) =>
      `Back from ${speed(p.heldMmPerS)} to ${speed(p.speedMmPerS)}: more stayed in than should have.`,
    remedy: () =>
      'Look at lens and focus first; then type the slower speed, cut the sheet and count it.',
  },
  'plan-stay': {
    message: (p) =>
      `Stay at ${speed(p.speedMmPerS)}: typing another speed would cost more than it saves.`,
    remedy: () => 'Cut the sheet and count it.',
  },
  'plan-try-faster': {
    message: (p) =>
      `Cut this sheet at ${speed(p.speedMmPerS)} and ${p.parts} of its parts faster: what they show pays on the sheets after it.`,
    remedy: () => 'Count the two settings apart.',
  },
  'plan-nothing-keeps': {
    message: (p) =>
      `No speed is known yet to keep what was asked for: ${speed(p.speedMmPerS)} comes nearest, with about ${p.notOutOf100} in 100 sound parts not coming out.`,
    remedy: () => 'Check lens, focus and air before the sheet; count it, or use more power.',
  },
  'plan-nothing-keeps-since-it-welds': {
    message: (p) =>
      `No speed is known yet to keep what was asked for: faster too little is cut through, slower too much welds back. ${speed(p.speedMmPerS)} comes nearest, with about ${p.notOutOf100} in 100 sound parts not coming out.`,
    remedy: () =>
      'Check lens, focus and air before the sheet, and look at what stays in: whether it welded or was not through.',
  },
  'plan-done': {
    message: () => 'The order is done.',
    remedy: () => 'Keep the setting: the next order starts with it.',
  },
} satisfies Sentences<PlanCode>;
