import type { KerfReasonCode, KerfRemarkCode } from '../../core/problems/kerf.ts';
import type { Sentences } from '../shape/sentence.ts';

/** What is said of the width that a cut removes, and of joints. */
export const kerfWords = {
  'kerf-no-comb': {
    message: () => 'No comb was measured.',
    remedy: () =>
      'Cut a block into strips, push them together, and measure across all of them, three times.',
  },
  'kerf-not-positive': {
    message: (p) =>
      `The strips together are no narrower than they were drawn (kerf ${p.kerfMm} mm): that cannot be.`,
    remedy: () =>
      'Look whether the width as drawn, the number of strips and the readings belong together, and whether char keeps the strips apart.',
  },
  'kerf-one-place': {
    message: () => 'One comb tells the kerf of its own place and direction only.',
    remedy: () => 'Cut combs in several places and in both directions for a kerf of the sheet.',
  },
  'kerf-two-combs': {
    message: () => 'Two combs say little of how the kerf differs from place to place.',
    remedy: () => 'A third and fourth comb narrow it most.',
  },
  'kerf-without-bar': {
    message: () =>
      'Without a bar beside the comb, the machine’s scale and the caliper’s own error are part of the kerf.',
    remedy: () => 'Cut a bar as wide as the comb, in one piece, and measure it too.',
  },
  'kerf-directions-differ': {
    message: (p) =>
      `The kerf differs by direction: ${p.acrossMm} mm across, ${p.upMm} mm up the bed.`,
    remedy: () =>
      'An oval beam does so: look at mirrors and lens. Until then a joint fits one way better than the other.',
  },
  'kerf-wider-than-usual': {
    message: (p) => `A kerf of ${p.kerfMm} mm is wide; ${p.usualMm} mm is seldom passed.`,
    remedy: () => 'Look at focus and lens, and measure again.',
  },
  'kerf-agrees': {
    message: (p) =>
      `This piece agrees with what was kept: ${p.hereMm} mm here, ${p.keptMm} mm then, no further apart than both are open (${p.openMm} mm).`,
    remedy: () => 'Joints and drawings may go on with the kept kerf.',
  },
  'kerf-differs': {
    message: (p) =>
      `This piece differs from what was kept: ${p.hereMm} mm here, ${p.keptMm} mm then, further apart than both are open (${p.openMm} mm).`,
    remedy: () =>
      'Cut combs in several places and keep the kerf of this batch; look at focus and lens too.',
  },
  'joint-slots-unread': {
    message: () => 'Two slots at least are needed to tell a joint.',
    remedy: () => 'Try a tongue of the same sheet in each slot and say how it goes in.',
  },
  'joint-slots-mixed': {
    message: (p) => `The slot of ${p.wideMm} mm went tighter than the one of ${p.narrowMm} mm.`,
    remedy: () => 'Try both again with the same tongue; look for char or a bent piece.',
  },
  'grow-not-a-drawing': {
    message: () => 'A program says where the beam goes, not how large a part is to be.',
    remedy: () => 'Take the drawing that it was made from, as SVG or DXF.',
  },
  'comb-piece-too-small': {
    message: (p) =>
      `These combs need a piece of ${p.neededWidthMm} × ${p.neededHeightMm} mm; yours is ${p.widthMm} × ${p.heightMm} mm.`,
    remedy: () => 'Take a larger piece, fewer places or one direction.',
  },
  'comb-too-wide': {
    message: (p) =>
      `${p.strips} strips of ${p.stripMm} mm are ${p.nominalMm} mm together: more than ${p.mostMm} mm is beyond most calipers.`,
    remedy: () => 'Ask for fewer strips.',
  },
  'slots-too-narrow': {
    message: (p) =>
      `In a sheet of ${p.thicknessMm} mm the beam alone opens a slot that is too wide.`,
    remedy: () => 'Joints of this kind need a thicker sheet.',
  },
  'grow-hole-lost': {
    message: (p) =>
      `${p.count} ${p.count === '1' ? 'hole is' : 'holes are'} no wider than the kerf and ${p.count === '1' ? 'is' : 'are'} gone; the first is at ${p.xMm}, ${p.yMm} mm.`,
    remedy: () => 'Draw such a hole as one line, which the beam opens by its own width.',
  },
  'grow-gap-lost': {
    message: (p) =>
      `In ${p.count} ${p.count === '1' ? 'place' : 'places'} two edges of a part stand nearer than the kerf, and the gap between them is gone; the first is at ${p.xMm}, ${p.yMm} mm.`,
    remedy: () => 'Draw such a gap as one line, which the beam opens by its own width.',
  },
  'grow-parts-meet': {
    message: () =>
      'Parts stand nearer to one another than one kerf, or share a line: now they run into one another.',
    remedy: () => 'Move them apart before the lines are moved.',
  },
  'grow-lines-stay': {
    message: (p) =>
      `${p.count} ${p.count === '1' ? 'line frees' : 'lines free'} no part and ${p.count === '1' ? 'stays' : 'stay'} as drawn.`,
    remedy: () => 'Close an outline whose ends do not meet, where it is to be moved too.',
  },
  'joint-between-slots': {
    message: (p) =>
      `No slot went ${p.kind}; ${p.drawMm} mm lies between those that went tighter and looser: a guess.`,
    remedy: () => 'Cut a slot of that width and try it.',
  },
  'joint-not-seen': {
    message: (p) => `No slot went ${p.kind}, and the card does not reach far enough to tell.`,
    remedy: () => 'Cut slots further on.',
  },
} satisfies Sentences<KerfReasonCode | KerfRemarkCode>;
