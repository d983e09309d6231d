import type { Card } from './card.ts';

/** What a person is about to do at the machine with a card, for its cautions; each is an act of the words layer's list. */
export const everyCardActs = [
  'unattended',
  'fire',
  'card',
  'beforeCut',
  'injury',
  'always',
] as const;
export type CardAct = (typeof everyCardActs)[number] | 'airOff' | 'slowThick' | 'newMaterial';

/** From this thickness on, at no more than this speed, a cut glows on. Common practice, no source. */
const slowThrough = { thicknessMm: 6, speedMmPerS: 3 };

/** The acts of one card, what is its own first: air off, and very slow through thick sheet. */
export const actsOfCard = ({ rungs, thicknessMm = 0 }: Card): readonly CardAct[] => {
  const settings = rungs.map(({ setting }) => setting);
  const isAirOff = settings.some(({ air }) => air === 'off');
  const isSlow =
    thicknessMm >= slowThrough.thicknessMm &&
    settings.some(({ speedMmPerS }) => speedMmPerS <= slowThrough.speedMmPerS);
  return [
    ...(isAirOff ? (['airOff'] as const) : []),
    ...(isSlow ? (['slowThick'] as const) : []),
    ...everyCardActs,
  ];
};
