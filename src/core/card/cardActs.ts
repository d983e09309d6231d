import type { Setting } from '../machine/setting.ts';
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
export type SettingAct = 'airOff' | 'slowThick';
export type CardAct = (typeof everyCardActs)[number] | SettingAct | 'newMaterial';

/** From this thickness on, at no more than this speed, a cut glows on. Common practice, no source. */
const slowThrough = { thicknessMm: 6, speedMmPerS: 3 };

/** What is cut with some settings. */
export interface CutWith {
  readonly settings: readonly Pick<Setting, 'air' | 'speedMmPerS'>[];
  /** What only marks it: its air counts. */
  readonly marks?: readonly Pick<Setting, 'air'>[];
  readonly thicknessMm: number;
  /** Whether the material may glow on (`glowsOn`). */
  readonly glows: boolean;
}

/** The acts that settings bring with them wherever they stand: air off, and very slow through thick sheet that glows on. */
export const actsOfSettings = ({
  settings,
  marks = [],
  thicknessMm,
  glows,
}: CutWith): readonly SettingAct[] => {
  const isAirOff = [...settings, ...marks].some(({ air }) => air === 'off');
  const isSlow =
    glows &&
    thicknessMm >= slowThrough.thicknessMm &&
    settings.some(({ speedMmPerS }) => speedMmPerS <= slowThrough.speedMmPerS);
  return [...(isAirOff ? (['airOff'] as const) : []), ...(isSlow ? (['slowThick'] as const) : [])];
};

/** The acts of one card, what is its own first. */
export const actsOfCard = (
  { rungs, scoring, trusted, thicknessMm = 0 }: Card,
  glows: boolean,
): readonly CardAct[] => [
  ...actsOfSettings({
    settings: [...rungs.map(({ setting }) => setting), ...(trusted === undefined ? [] : [trusted])],
    marks: scoring === undefined ? [] : [scoring],
    thicknessMm,
    glows,
  }),
  ...everyCardActs,
];
