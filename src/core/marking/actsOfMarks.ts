import { actsOfSettings, everyCardActs, type CardAct } from '../card/cardActs.ts';
import type { Setting } from '../machine/setting.ts';

export type MarkAct = CardAct | 'marking';

/** What a person is about to do at the machine who marks a sheet, for its cautions. What only marks does not glow on through it. */
export const actsOfMarks = (settings: readonly Setting[]): readonly MarkAct[] => [
  'marking',
  ...actsOfSettings({ settings, thicknessMm: 0, glows: false }),
  ...everyCardActs,
];
