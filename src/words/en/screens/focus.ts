import type { FocusAdvice, GaugeCheck } from '../../../core/focus/focusAdvice.ts';
import type { FocusEstimate, FocusTest, Interval } from '../../../core/focus/focusTest.ts';
import { lengthWords } from '../terms/figures.ts';
import { inUnitsShown } from '../terms/inUnits.ts';

/** To a tenth of a mm where that is all that is known; finer where it is. */
const about = (mm: number, { low, high }: Interval): string =>
  lengthWords(Number(mm.toFixed(high - low > 0.5 ? 1 : 2)));

const between = (interval: Interval): string =>
  `${about(interval.low, interval)} to ${about(interval.high, interval)}, 95\u202f% sure`;

const times = (factor: number): string => String(Number(factor.toFixed(1)));

const gauge: Readonly<Record<GaugeCheck['verdict'], (gaugeMm: number, byMm: number) => string>> = {
  fits: (gaugeMm) =>
    `Your gauge of ${lengthWords(gaugeMm)} puts the sheet into the focus, as far as this test can tell.`,
  near: (gaugeMm, byMm) =>
    `Your gauge of ${lengthWords(gaugeMm)} is ${off(byMm)}: little to the depth of focus, but worth knowing.`,
  off: (gaugeMm, byMm) =>
    `Your gauge of ${lengthWords(gaugeMm)} is ${off(byMm)}: beyond doubt, and enough to show in cuts.`,
};

const off = (byMm: number): string =>
  `${lengthWords(Number(Math.abs(byMm).toFixed(1)))} too ${byMm > 0 ? 'tall' : 'short'}`;

const places: Readonly<
  Record<FocusAdvice['place'], (thicknessMm: number, said: FocusAdvice) => string>
> = {
  surface: (thicknessMm, said) =>
    `At the surface: ${lengthWords(thicknessMm)} lie within the depth of focus, the beam is ${times(said.widest)} times its narrowest at the back. Set the nozzle ${lengthWords(Number(said.gapMm.toFixed(1)))} above the sheet.`,
  into: (thicknessMm, said) =>
    `Into the sheet: half-way, ${lengthWords(Number(said.intoMm.toFixed(1)))} below its top. So the beam is at most ${times(said.widest)} times its narrowest in ${lengthWords(thicknessMm)}; focused on the surface it would be ${times(said.widestFromSurface)} times at the back. Set the nozzle ${lengthWords(Number(said.gapMm.toFixed(1)))} above the sheet.`,
  'too-thick': (thicknessMm, said) =>
    `Into the sheet, half-way (${lengthWords(Number(said.intoMm.toFixed(1)))}) at most; but no height serves all of ${lengthWords(thicknessMm)}: the beam is ${times(said.widest)} times its narrowest at both faces (${times(said.widestFromSurface)} times at the back if focused on the surface). Expect a kerf that is not straight; a longer lens serves more. Half-way means the nozzle ${lengthWords(Number(said.gapMm.toFixed(1)))} above the sheet.`,
};

/** Finding the focus on a ramp. */
export const focusText = {
  title: 'Find the focus',
  lead: 'A line drawn up a tilted strip is sharp where the sheet passes through the focus. Its fading ends, or its width along the way, say at what height that is.',
  ramp: 'The ramp',
  rampMore: 'Measured with the machine stopped and the beam disabled.',
  length: 'Along the strip, from its low edge to the block',
  block: 'Height of the block',
  nozzleGap: 'Nozzle above the strip at its low edge',
  gauge: 'Your gauge, or where you believe the focus is',
  gaugeHint: 'The gap under the nozzle. It is the reference, and is checked by this test.',
  suggest: (blockMm: number, gapMm: number) =>
    `Take a block of ${lengthWords(blockMm)} and set the nozzle to ${lengthWords(gapMm)}`,
  picture: (blockMm: number, leftMm: number) =>
    `The strip from the side: it rises ${lengthWords(blockMm)}, and ${lengthWords(leftMm)} are left under the nozzle at its high end.`,
  draw: 'Draw it',
  material: 'What the strip is of',
  materialHint: 'A flat offcut of what you cut anyway.',
  stripThickness: 'How thick the strip is',
  line: 'What the strongest line is drawn with',
  lineHint: 'What you score a line with: it marks plainly and cuts nothing through.',
  files: { pdf: 'Sheet (PDF)' },
  notYet: 'The files come when ramp, material and line are right.',
  read: 'Read it',
  how: 'What did you measure?',
  kinds: { fades: 'Where lines fade out', widths: 'How wide a line is' },
  kindsMore: {
    fades: 'By eye, along a ruler. Two minutes.',
    widths: 'With a magnifier, at twelve places. Surer, and it tells the depth.',
  },
  fadesMore: 'Along the strip from its low edge; the ruler on it counts the same way.',
  lineName: (letter: string) => `Line ${letter}`,
  from: (letter: string) => `Line ${letter} begins to show at`,
  to: (letter: string) => `Line ${letter} fades out at`,
  offLow: 'It shows from the low end on',
  offHigh: 'It shows to the high end',
  widths: 'Widths along line A',
  get widthsHint() {
    return inUnitsShown(
      'One a line: place along the strip, width. Such as 30 mm 0.42 mm. Twelve or so, where it shows, on both sides.',
    );
  },
  found: 'Where the focus is',
  nothing: 'Enter what you read, and it says here.',
  sentence: ({ gapMm, alongMm }: FocusEstimate) =>
    `The sheet is in the focus with the nozzle ${about(gapMm.value, gapMm)} above it (${between(gapMm)}). On the strip that is ${lengthWords(Math.round(alongMm.value))} from the low edge.`,
  measured: 'How well you measured block and gap comes on top.',
  depth: (rayleigh: Interval) =>
    `Depth of focus: over ${about(2 * rayleigh.value, rayleigh)} (${about(2 * rayleigh.low, rayleigh)} to ${about(2 * rayleigh.high, rayleigh)}) the beam’s area is no more than doubled.`,
  serves: (thicknessMm: number) =>
    thicknessMm < 0.5
      ? 'The focus is not known well enough to say how thick a sheet one height serves.'
      : `One height surely serves sheets of up to ${lengthWords(Number(thicknessMm.toFixed(1)))}, the focus in their middle.`,
  gaugeSays: (gaugeMm: number, { verdict, byMm }: GaugeCheck) => gauge[verdict](gaugeMm, byMm),
  thickness: 'Thickness of the sheet',
  surface: 'At the surface or into the sheet?',
  advice: (thicknessMm: number, said: FocusAdvice) => places[said.place](thicknessMm, said),
  adviceMore: 'By geometry alone: cut a card at both heights where it matters.',
  keep: 'Keep it',
  kept: 'Kept, with today’s date.',
  startOver: 'Begin again',
  startOverAsk: 'What was read goes; the ramp stays.',
  earlier: 'Focus tests so far',
  none: 'None yet.',
  lineOf: ({ readings }: FocusTest, found: FocusEstimate | undefined) =>
    [
      found === undefined
        ? 'no focus found'
        : `nozzle ${about(found.gapMm.value, found.gapMm)} above the sheet`,
      readings.kind === 'fades' ? 'by fading lines' : 'by widths',
    ].join(', '),
  remove: 'Remove',
  removeAsk: 'This focus test goes.',
};
