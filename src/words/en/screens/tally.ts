import type { Tally } from '../../../core/reading/tally.ts';
import type { FlawKind } from '../../../core/stock/flawKind.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import { counted, settingWords } from '../terms/figures.ts';

type Counts = Pick<Tally, 'out' | 'hangs' | 'stays' | 'spoilt'>;

/** Counting an order. */
export const tallyText = {
  title: 'Count an order',
  lead: 'The order is the best card there is.',
  at: (spot: Setting) => `Cut at ${settingWords(spot)}`,
  cut: 'Parts cut',
  knife: 'Needed a knife',
  stays: 'Not through',
  flaw: {
    'pocket-or-knot': 'Lost to a pocket or knot',
    knot: 'Lost to a knot',
    flaw: 'Lost to a flaw of the sheet',
  } satisfies Record<FlawKind, string>,
  out: 'Came out',
  pushed: 'Parts that came with a light push count as out.',
  tooMany: 'More troubled parts than parts cut: check the figures.',
  length: 'Length of cut of one part',
  lengthHint:
    'All the way round, holes included; roughly will do. The promise is for parts of this length from then on.',
  which: 'What was run?',
  correct: 'Correct this count',
  leaveIt: 'Leave it as it was',
  remove: 'Remove it',
  removeAsk: 'The count goes, and what it says of the setting with it.',
  batch: 'Batch, if you keep them apart',
  batchHint: 'Another one than before is marked on the chart.',
  save: 'Save the count',
  speed: 'Speed it was cut at',
  power: 'Power setting it was cut at',
  line: ({ out, hangs, stays, spoilt }: Counts) =>
    [
      `${String(out)} of ${counted(out + hangs + stays + spoilt, 'part')} out`,
      ...(hangs > 0 ? [`${String(hangs)} knife`] : []),
      ...(stays > 0 ? [`${String(stays)} not through`] : []),
      ...(spoilt > 0 ? [`${String(spoilt)} lost to the sheet`] : []),
    ].join(', '),
};
