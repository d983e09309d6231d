import type { FitAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import { powerWords, speedWords, unitsShown } from '../terms/figures.ts';

/** The picture of power and speed. */
export const pictureText = {
  powerAxis: 'Power setting (%)',
  speedAxis: () => `Speed (${unitsShown().speed})`,
  grades: { out: 'out', hangs: 'hangs', stays: 'not through' },
  holds: 'the fastest speed that holds',
  half: 'half come out; shaded: where that may lie',
  limit: {
    machine: (powerPct: number) => `The machine may be set to ${powerWords(powerPct)} at most.`,
    'rated-current': (powerPct: number) =>
      `Above ${powerWords(powerPct)} the tube runs above its rated current (dotted line, where it is in the picture).`,
  },
  label: ({ recommended, changeover }: FitAnswer) => {
    const middle = changeover[Math.floor(changeover.length / 2)];
    const half =
      middle === undefined
        ? ''
        : ` At ${powerWords(middle.powerPct)} half come out at ${speedWords(middle.v50MmPerS)}.`;
    return recommended === null
      ? `Speed against power setting, with the shapes as they fell.${half}`
      : `Speed against power setting, with the shapes as they fell.${half} The fastest that holds: ${speedWords(recommended.speedMmPerS)} at ${powerWords(recommended.powerPct)}.`;
  },
} as const;
