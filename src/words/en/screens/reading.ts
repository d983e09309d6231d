import type { EdgeGrade } from '../../../core/reading/edge.ts';
import type { Grade, SpoiltReason } from '../../../core/reading/grade.ts';
import type { HowItCame, ReadingSource } from '../../../core/reading/cellEvent.ts';
import { counted, passesWords, powerWords, speedWords } from '../terms/figures.ts';

interface Spot {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly passes: number;
}

const gradeNames: Readonly<Record<Grade, string>> = {
  out: 'out',
  hangs: 'hangs',
  stays: 'not through',
};

const edgeNames: Readonly<Record<EdgeGrade, string>> = {
  clean: 'clean',
  brown: 'brown',
  black: 'black',
  clear: 'clear',
  frosted: 'frosted',
  flamed: 'flamed',
};

/** What is said while a card is read. */
export const readingText = {
  question: 'What fell out?',
  grades: gradeNames,
  gradeMore: {
    out: 'falls, or comes with a light push',
    hangs: 'through nearly everywhere, needs a knife',
    stays: 'not through',
  } satisfies Record<Grade, string>,
  unread: 'not read',
  spoilt: 'spoilt',
  spoiltAsk: 'Spoilt',
  spoiltWhy: 'Why does this shape say nothing about its setting?',
  /** Where a sheet has neither glue pockets nor knots. */
  flaw: 'a flaw of the sheet',
  flawMore: 'such as a bubble or a patch',
  reasons: {
    'glue-pocket': 'glue pocket',
    knot: 'knot',
    clip: 'a clip in the way',
    lifted: 'sheet lifted or bowed',
    slat: 'hit a slat',
    'welded-back': 'welded back behind the beam',
  } satisfies Record<SpoiltReason, string>,
  reasonMore: {
    'glue-pocket': 'a flaw of the sheet',
    knot: 'a flaw of the sheet',
    clip: 'counts for nothing',
    lifted: 'counts for nothing',
    slat: 'counts for nothing',
    'welded-back': 'acrylic: a sign of too slow',
  } satisfies Record<SpoiltReason, string>,
  how: 'How did it come?',
  hows: { fell: 'fell by itself', pushed: 'a light push', knife: 'a knife' } satisfies Record<
    HowItCame,
    string
  >,
  sources: {
    photo: 'read from a photo',
    'photo-corrected': 'a photo, corrected by hand',
  } satisfies Record<ReadingSource, string>,
  edge: 'Edge',
  edgeHow: 'How is the edge? Only if you care for it.',
  edges: edgeNames,
  taped: 'through tape',
  clear: 'Not read',
  asCut: 'Cut at another setting?',
  asCutMore: 'Correct what was really typed. The words on the card stay as they were cut.',
  asCutSpeed: 'Speed as cut',
  asCutPower: 'Power setting as cut',
  corrected: 'corrected',
  asCutSay: 'Correct it',
  back: 'Back',
  undo: 'Undo',
  redo: 'Redo',
  rest: (unread: number) =>
    unread === 1 ? 'The last one is not through' : `The other ${String(unread)} are not through`,
  progress: (read: number, cells: number) => `${String(read)} of ${counted(cells, 'shape')} read`,
  cellName: (id: string, spot: Spot) =>
    `${id}, ${speedWords(spot.speedMmPerS)}, ${powerWords(spot.powerPct)}${passesWords(spot.passes)}`,
  card: (code: string, cells: number) => `Card ${code}, ${counted(cells, 'shape')}`,
  act: 'How to look',
  actHow:
    'Lift the card level. One knuckle tap, then one light push. Look at the back when one hangs.',
  pickCell: 'Tap a shape: once for out, again for hangs, again for not through.',
  keys: 'With the keyboard',
  keyList: [
    ['Arrow keys', 'to the next shape'],
    ['O, H, S', 'out, hangs, not through (stays in)'],
    ['Space', 'steps through the three'],
    ['X', 'spoilt'],
    ['Backspace', 'not read'],
    ['U', 'undo'],
  ],
} as const;
