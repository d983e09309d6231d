import { rungLetter } from '../../../core/card/rungLetter.ts';
import type { Mark, MarkKind, TapeKind } from '../../../core/marking/mark.ts';
import type { ToneReading } from '../../../core/marking/evenShades.ts';
import type { ShadesOfStrip } from '../../../core/marking/markTest.ts';
import type { StripKind } from '../../../core/marking/markStrip.ts';
import type { Tone, ToneCurve } from '../../../core/marking/toneCurve.ts';
import { lengthWords, settingWords, type Spoken } from '../terms/figures.ts';

const tapes: Readonly<Record<TapeKind, string>> = {
  none: 'none',
  paper: 'paper tape',
  film: 'film',
};

const readBy: Readonly<Record<ToneReading, string>> = {
  meter: 'read with a colour meter',
  card: 'read against a grey card',
  photo: 'read from a photo',
};

/** Lines an inch, as many machines ask for. */
const perInch = (lineSpacingMm: number): string => (25.4 / lineSpacingMm).toFixed(0);

const markWords = (mark: Mark): string => {
  switch (mark.kind) {
    case 'score':
      return settingWords(mark.setting);
    case 'engrave':
      return `${settingWords(mark.setting)}, lines ${lengthWords(mark.lineSpacingMm)} apart`;
    case 'tape':
      return tapes[mark.tape];
  }
};

/** Score, engraving and tape beside a kept cut. */
export const marksText = {
  title: 'Score, engrave, tape',
  lead: (cut: Spoken, stock: string) => `Beside the cut at ${settingWords(cut)}; ${stock}.`,
  kinds: { score: 'Score', engrave: 'Engrave', tape: 'Tape' } satisfies Record<MarkKind, string>,
  mark: markWords,
  kept: 'Kept for this material',
  none: 'Nothing yet.',
  keptOn: (at: string, batch: string | undefined) =>
    `Kept ${new Date(at).toLocaleDateString()}${batch === undefined ? '' : ` on batch ${batch}`}.`,
  /** In the place of a setting that is beyond a limit by now. */
  notAnyMore: 'not any more: beyond a limit',
  keepOne: 'Keep one',
  keepMore:
    'Try it on an offcut of the same sheet first. It is kept for this material and thickness on this machine, and stands on the list for the wall and the shelf label.',
  kind: 'What is it?',
  setting: { score: 'Score a line with', engrave: 'Engrave with' },
  guess:
    'A guess to begin with, from the tube and the kept cut (common practice, no source): gentle enough that it should not cut. Nothing here was tried yet.',
  lineSpacing: 'From line to line',
  lineSpacingHint: (lineSpacingMm: number) =>
    `That is ${perInch(lineSpacingMm)} lines an inch. Where lines overlap they burn twice: that is counted.`,
  air: 'Air, where it is not as for the cut',
  tape: 'What covers the face?',
  tapes,
  note: 'Note',
  noteHint: {
    score: 'What it looks like: just visible, plain, deep.',
    engrave: 'What it looks like: pale, brown, deep; which way the lines run.',
    tape: 'Which tape, which side; peeled hot or cold.',
  } satisfies Record<MarkKind, string>,
  keep: {
    score: 'Keep this score',
    engrave: 'Keep this engraving',
    tape: 'Keep this tape',
  } satisfies Record<MarkKind, string>,
  keptSaid: 'Kept, with today’s date.',
  strip: 'Find it with a strip',
  stripMore:
    'Steps from gentle to strong on an offcut, each with its setting beside it. Look, tap the palest that you see and the one that you want, and that one is kept.',
  stripKind: 'What is it to find?',
  stripKinds: { shades: 'A shade to engrave', lines: 'A line to score' } satisfies Record<
    StripKind,
    string
  >,
  files: { pdf: 'Sheet (PDF)' },
  palest: 'The palest that you see',
  wanted: 'The one that you want',
  keepStrip: {
    shades: 'Keep this engraving from the strip',
    lines: 'Keep this score from the strip',
  } satisfies Record<StripKind, string>,
  shades: 'Even shades from it',
  shadesMore:
    'Enter how light each band came out in its middle half: L*, from 0 for black to 100 for white. A curve through them gives settings whose shades lie evenly apart, and none of them stronger than what was marked.',
  readBy: 'How is it read?',
  readings: {
    meter: 'With a colour meter',
    card: 'Against a grey card',
    photo: 'From a photo',
  } satisfies Record<ToneReading, string>,
  readingsMore: {
    meter:
      'Held to be right within 3, two times its standard uncertainty (common practice, no source).',
    card: 'The field of a printed grey card with its L* beside it that looks most like it. Held to be right within 8, two times its standard uncertainty (common practice, no source).',
    photo:
      'Beside white paper, which is held to be L* 94. Held to be right within 5, two times its standard uncertainty, most of it what a camera makes of tones (by judgement; not yet tried on real photos).',
  } satisfies Record<ToneReading, string>,
  tonePhoto: {
    cautions: 'Before you photograph',
    how: [
      'Clean the strip as you would a part that is sold, and lay it flat in even light, with no lamp that mirrors in it.',
      'Lay a strip of plain white paper on each side of the shades, up to the corner signs and as high as all of them; it may cover the words.',
      'Take the photo from above without flash, shades and paper filling it.',
    ],
    pick: { take: 'Photograph the shades', choose: 'Choose a photo of the shades' },
    corners: 'Point at the corner signs',
    cornersMore:
      'Tap the four signs about the shades, the one at the upper left of A first, then round them. Where a strip has none, tap just outside the corners of the shades.',
    cornersPicture: 'The photo of the shades',
    cornersTapped: (count: number) => `${String(count)} of 4 signs`,
    cornersRead: 'Read the shades',
    cornersAnew: 'Begin again',
    reading: 'Reading the shades …',
    broke: 'Reading the photo broke off.',
    read: 'Read from the photo: look whether the figures fall or rise as your eye has it, and correct what is off.',
    again: 'Another photo',
  },
  lightness: (step: string) => `L* of ${step}`,
  shadesSeen: ({ lightness, by }: Pick<ShadesOfStrip, 'lightness' | 'by'>) =>
    `L* of the shades, ${readBy[by]}: ${lightness
      .flatMap((seen, i) => (seen === null ? [] : [`${rungLetter(i)} ${seen.toFixed(0)}`]))
      .join(', ')}.`,
  shadesWanted: 'How many shades?',
  shadesFound: 'Settings for even shades',
  shadeColumns: { shade: 'Shade', lightness: 'L*', setting: 'Setting' },
  tone: ({ lightness, standardL }: Tone) =>
    `${lightness.toFixed(0)} ± ${Math.max(1, Math.ceil(2 * standardL)).toFixed(0)}`,
  toneSure: '±: the curve’s own uncertainty, k\u00a0=\u00a02. Grain and another sheet come on top.',
  tonePicture: ({ turns }: Pick<ToneCurve, 'turns'>) =>
    turns === 1
      ? 'How light it comes out: the more it gets, the paler.'
      : 'How light it comes out: the more it gets, the darker.',
  toneAxes: { light: 'L*', dose: 'more energy' },
  take: (shade: number) => `Take shade ${String(shade)}`,
  taken:
    'It stands above now, to be kept from there. It lies between what was marked: try it on an offcut first.',
  remove: 'Remove',
  removeAsk: 'The mark goes; the cut stays.',
  back: 'Back to the kept setting',
} as const;
