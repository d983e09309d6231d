import type { FocusRamp } from '../../core/focus/focusRamp.ts';
import type { RampLine } from '../../core/card/rampCard.ts';
import { lengthWords, powerWords, speedWords } from './terms/figures.ts';

const mm = (value: number): string => lengthWords(Number(value.toFixed(2)));

/** The page that lies beside the machine when a focus ramp is drawn, printed or on a screen. */
export const rampSheetText = {
  title: 'Focus ramp',
  file: 'focus-ramp',
  about: ({ lengthMm, blockMm, nozzleGapMm }: FocusRamp) =>
    `A straight strip, ${mm(lengthMm)} from its low edge to where it rests on a block of ${mm(blockMm)}; the nozzle ${mm(nozzleGapMm)} above its low edge.`,
  clearance: ({ blockMm, nozzleGapMm }: FocusRamp) =>
    `At the high end ${mm(nozzleGapMm - blockMm)} are left below the nozzle. Never less than ${mm(3)}.`,
  steps: ({ lengthMm, blockMm, nozzleGapMm }: FocusRamp) => [
    `Machine stopped, beam disabled. Lay a straight strip of a flat sheet that you cut anyway along X: its low edge on the bed, its underside at ${mm(lengthMm)} along it on a block of ${mm(blockMm)}. It must not stick out over the block. Hold it down.`,
    `Set the head so that the nozzle stands ${mm(nozzleGapMm)} above the strip at its low edge, with your gauge or a caliper. Write that gap down if it came out otherwise.`,
    `Go by hand to the high end, beam off: at least ${mm(3)} must be left under the nozzle. Autofocus off: the head must not move up or down.`,
    'Set zero at the strip’s low left corner. Dry run the whole drawing, beam off; nothing may touch.',
    'Lid shut, extraction on. Draw it in the order of the list: every line begins at the low end. Stay with it.',
    'Let the fume clear. Take the strip out and read it lying flat, from the low edge, along the strip.',
  ],
  line: ({ letter, setting }: RampLine) =>
    `Line ${letter}: ${speedWords(setting.speedMmPerS)}, ${powerWords(setting.powerPct)}`,
  marks: (line: RampLine) =>
    `Ruler and figures: as line ${line.letter}. Turn off re-ordering: each line starts at the low end.`,
  tryFirst: 'Try line A on scrap first: it should mark plainly and cut nothing through.',
  noteFields: (letters: readonly string[]) => [
    ...letters.map((letter) => `Line ${letter} shows from … to …`),
    'Narrowest at, about',
    'Nozzle gap as set',
    'Height of the gauge',
  ],
} as const;
