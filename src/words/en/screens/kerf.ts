import type { CombPlaceCount } from '../../../core/kerf/combSheet.ts';
import type { Joint, JointKind, SlotFit } from '../../../core/kerf/joints.ts';
import type { Kerf } from '../../../core/kerf/kerf.ts';
import {
  counted,
  fineLengthWords,
  lengthWords,
  settingWords,
  type Spoken,
} from '../terms/figures.ts';

const mm = (value: number): string => lengthWords(Number(value.toFixed(2)));
const fine = fineLengthWords;

const fits: Readonly<Record<SlotFit, string>> = {
  no: 'no',
  press: 'press',
  snug: 'snug',
  slip: 'slip',
  loose: 'loose',
};

const joints: Readonly<Record<JointKind, string>> = {
  press: 'Press, with a mallet',
  snug: 'Snug, by hand, and stays',
  slip: 'Slip, slides',
};

const clearance = (clearanceMm: number): string =>
  clearanceMm < 0 ? `${mm(-clearanceMm)} pressed` : `${mm(clearanceMm)} of play`;

/** Kerf and joints of one setting on one sheet. */
export const kerfText = {
  title: 'Kerf and joints',
  lead: (setting: Spoken, stock: string) => `${settingWords(setting)}; ${stock}.`,
  noSetting: 'There is no setting for this sheet yet: its kerf is measured once one holds.',
  comb: '1. Cut a comb',
  combMore:
    'A block cut into strips, and a bar of the same width beside it. What the strips lack together, shared by the cuts, is the kerf: so the caliper’s own error is shared too.',
  width: 'Width of the piece',
  height: 'Height of the piece',
  places: 'In how many places',
  placeCount: (count: CombPlaceCount): string =>
    ({ 1: 'one corner', 2: 'two corners', 4: 'all four corners' })[count],
  directions: 'Along which axis',
  direction: { both: 'X and Y', across: 'X alone', up: 'Y alone' },
  oneIsEnough: (kept: Kerf, batch: string | undefined) =>
    `Kept${batch === undefined ? '' : ` of batch ${batch}`}: ${fine(kept.kerfMm)} ± ${fine(kept.expandedMm)}. One comb is enough to see whether this piece agrees.`,
  scoring: 'What you score a line with',
  scoringHint:
    'It marks plainly and cuts nothing through. Left as it is, it is a guess: try it on scrap.',
  files: { pdf: 'Sheet (PDF)' },
  picture: (count: number) =>
    `The piece from above with ${counted(count, 'comb')}, zero lower left.`,
  read: '2. Measure',
  sketch:
    'Above, A: the strips of one comb pushed together between the jaws of a caliper. Below, B: the bar in one piece.',
  readMore:
    'Every strip carries its comb’s name. Brush off char, push the strips of one comb together, measure across all of them; then the bar of the same name.',
  combName: (label: string) => `Comb ${label}`,
  strips: (label: string, times: number) =>
    `A: strips of ${label} together${times === 1 ? '' : `, time ${String(times)}`}`,
  bar: (label: string, times: number) =>
    `B: bar ${label}${times === 1 ? '' : `, time ${String(times)}`}`,
  again: 'Measure everything once more',
  againMore: 'Three times is best: pushed together anew each time.',
  found: 'The kerf',
  nothing: 'Enter what you measured, and it says here. The strips of one comb are enough to begin.',
  kerf: ({ kerfMm, expandedMm, coverageFactor }: Kerf) =>
    `${fine(kerfMm)} ± ${fine(expandedMm)}, 95\u202f% sure (k\u00a0=\u00a0${coverageFactor.toFixed(1)}).`,
  grow: (growMm: number) =>
    `To come out as drawn: grow a part’s outline by ${fine(growMm)} all round, and let its holes shrink by ${fine(growMm)} all round. That is half the kerf.`,
  growHole: (growMm: number) =>
    `A hole that a given pin is to fit is drawn smaller by ${fine(2 * growMm)} across: the beam takes half the kerf on either side.`,
  drawing: '3. Your own drawing',
  drawingMore:
    'Its outlines are moved outward and its holes inward by half the kerf, on the layers and in the colours that it has. It stays on this computer.',
  pick: 'Your drawing, SVG or DXF',
  drawingWaits: 'It can be moved once the kerf is known.',
  grown: (parts: number, rest: number) =>
    [
      `${counted(parts, 'part')} moved`,
      ...(rest === 0 ? [] : [`${counted(rest, 'line')} left as drawn`]),
    ].join(', ') + '.',
  save: (kind: 'svg' | 'dxf') => `Save as ${kind.toUpperCase()}`,
  slots: '4. Cut slots for joints',
  slotsMore:
    'A row of slots, a little wider each, and two tongues of the same sheet. Measure a tongue, try it in every slot, and say how it goes in.',
  thickness: 'Thickness of the tongue',
  thicknessHint: 'Measured with the caliper: what it is sold as is not enough.',
  slotsPicture: (count: number) => `A plate with ${counted(count, 'slot')}, and two tongues.`,
  slot: (drawnMm: number) => drawnMm.toFixed(2),
  fits: { ...fits },
  fitsMore:
    'No: it does not go in. Press: with a mallet. Snug: by hand, and stays. Slip: it slides. Loose: with play.',
  joints: 'What to draw',
  jointsNothing: 'Say of two slots at least how the tongue goes in.',
  joint: ({ kind, drawMm, toMm, allowanceMm, clearanceMm }: Joint) =>
    `${joints[kind]}: draw the slot ${mm(drawMm)} wide (± ${mm(toMm)}), that is the thickness ${allowanceMm < 0 ? 'less' : 'and'} ${mm(Math.abs(allowanceMm))}${clearanceMm === undefined ? '' : `: ${clearance(clearanceMm)}`}.`,
  batch: 'Batch of this piece',
  keep: 'Keep it with the setting',
  kept: 'Kept, with today’s date.',
  earlier: 'Kept so far',
  none: 'Nothing yet.',
  keptLine: (found: Kerf | undefined, jointCount: number, batch: string | undefined) =>
    [
      ...(found === undefined ? [] : [`${fine(found.kerfMm)} ± ${fine(found.expandedMm)}`]),
      ...(jointCount === 0 ? [] : [counted(jointCount, 'joint')]),
      ...(batch === undefined ? [] : [`batch ${batch}`]),
    ].join(', '),
  fact: 'Kerf',
  remove: 'Remove',
  removeAsk: 'What was measured goes.',
  startOver: 'Begin again',
  startOverAsk: 'What was typed goes.',
  back: 'Back',
};
