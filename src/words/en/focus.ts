import type { FocusCode } from '../../core/problems/focus.ts';
import type { Sentences } from '../shape/sentence.ts';

/** What stands against a ramp, and what one did not show. */
export const focusWords = {
  'ramp-meets-nozzle': {
    message: (p) =>
      `A block of ${p.blockMm} mm would leave less than 3 mm below the nozzle, which stands ${p.nozzleGapMm} mm above the low end.`,
    remedy: (p) =>
      `Take a block of ${p.mostMm} mm at most, or raise the head first. Dry run the whole line, beam off.`,
  },
  'ramp-too-short': {
    message: (p) => `A strip of ${p.lengthMm} mm leaves no room for a line.`,
    remedy: (p) => `Take one of ${p.leastMm} mm or longer.`,
  },
  'ramp-too-flat': {
    message: (p) => `A rise of ${p.blockMm} mm hardly leaves the focus.`,
    remedy: (p) => `Take a block of ${p.leastMm} mm or more.`,
  },
  'ramp-too-steep': {
    message: (p) =>
      `A strip of ${p.lengthMm} mm on a block of ${p.blockMm} mm is too steep: it slides.`,
    remedy: (p) => `Take a strip of ${p.leastMm} mm or longer, or a lower block.`,
  },
  'ramp-no-room': {
    message: (p) =>
      `A focus ${p.gapMm} mm below the nozzle leaves no room for a ramp: it needs ${p.leastMm} mm.`,
    remedy: () =>
      'Measure the gap once more. If the nozzle stands that near, find the focus as the machine’s manual says.',
  },
  'ramp-setting-out-of-range': {
    message: (p) =>
      `The line asks for ${p.speedMmPerS} mm/s at ${p.powerPct} %; this machine is kept to ${p.slowest} to ${p.fastest} mm/s and ${p.mostPct} %.`,
    remedy: () => 'Choose what you score a line with, or correct the machine’s limits.',
  },
  'focus-readings-too-few': {
    message: () => 'That is too little to find a focus from.',
    remedy: () =>
      'One line that fades on both sides is enough; or the width of a line at six places or more, twelve for a sure answer.',
  },
  'focus-reading-off-strip': {
    message: (p) => `${p.alongMm} mm lies off the strip, which is ${p.lengthMm} mm long.`,
    remedy: () =>
      'Measure along the strip from its low edge, and give each width as more than nothing.',
  },
  'focus-beyond-high-end': {
    message: (p) =>
      `The ramp missed the focus: it lies beyond ${p.alongMm} mm, towards the high end or above it.`,
    remedy: () =>
      'Bring the nozzle nearer and draw the ramp again; the high end must keep 3 mm below it, so a lower block may be needed.',
  },
  'focus-beyond-low-end': {
    message: (p) =>
      `The ramp missed the focus: it lies before ${p.alongMm} mm, towards the low end or below it.`,
    remedy: () => 'Raise the nozzle and draw the ramp again.',
  },
  'focus-line-never-fades': {
    message: () => 'The lines show from end to end, so their middles say nothing.',
    remedy: () =>
      'Draw weaker lines: faster, or with less power. Or measure their width at places along them.',
  },
  'focus-widths-level': {
    message: () => 'These widths are much the same all along: no narrowest place shows.',
    remedy: () =>
      'Measure farther out to both sides, with a magnifier, or take a higher block. If the line never narrows, the ramp missed the focus.',
  },
  'focus-near-high-end': {
    message: () => 'The focus lies so near the last reading that it may lie beyond.',
    remedy: () =>
      'Bring the nozzle a little nearer and draw the ramp again, so that it comes into the middle.',
  },
  'focus-near-low-end': {
    message: () => 'The focus lies so near the first reading that it may lie before it.',
    remedy: () =>
      'Raise the nozzle a little and draw the ramp again, so that it comes into the middle.',
  },
  'focus-lines-disagree': {
    message: () =>
      'The middles of the lines lie farther apart than fading ends are usually misread.',
    remedy: () =>
      'Look at the ends again. If they stay, the strip may be bowed or may have moved: hold it down and repeat.',
  },
  'focus-depth-unknown': {
    message: () => 'How deep the focus is does not show in these readings.',
    remedy: () =>
      'Enter two or three lines of different speeds, or the width of one line at twelve places.',
  },
  'focus-gap-too-small': {
    message: (p) =>
      `That would bring the nozzle to ${p.gapMm} mm above the sheet; ${p.leastMm} mm is the least.`,
    remedy: () => 'Leave the focus nearer to the surface, or use a longer lens.',
  },
} satisfies Sentences<FocusCode>;
