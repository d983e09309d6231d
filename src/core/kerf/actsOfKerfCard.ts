import { actsOfSettings, everyCardActs, type CardAct } from '../card/cardActs.ts';
import type { KerfCard } from './kerfCard.ts';

/** What a person is about to do at the machine with a comb or slot card, for its cautions. `glows`: its material may glow on. */
export const actsOfKerfCard = (
  {
    setting,
    scoring = setting,
    thicknessMm,
  }: Pick<KerfCard, 'setting' | 'thicknessMm'> & Partial<Pick<KerfCard, 'scoring'>>,
  glows: boolean,
): readonly CardAct[] => [
  ...actsOfSettings({ settings: [setting], marks: [scoring], thicknessMm, glows }),
  ...everyCardActs,
];
