import type { TimeEstimate } from '../../../core/card/cardTime.ts';
import { durationWords, listed } from '../terms/figures.ts';

/** How long a card takes, and what the machine said it took. */
export const timeText = {
  title: 'How long it takes',
  should: ({ seconds, lowSeconds, highSeconds }: TimeEstimate) =>
    `${durationWords(seconds)}, give or take: between ${durationWords(lowSeconds)} and ${durationWords(highSeconds)}.`,
  /** What is less than a tenth of a second is left out. */
  goes: ({ goes: { cuttingS, cornersS, travelS, delaysS } }: TimeEstimate) => {
    const parts: readonly (readonly [number, string])[] = [
      [cuttingS, 'cutting'],
      [cornersS, 'slowing down for corners'],
      [travelS, 'travel between lines'],
      [delaysS, 'beam on and off, and pauses'],
    ];
    const said = parts
      .filter(([seconds]) => seconds >= 0.1)
      .map(([seconds, what]) => `${durationWords(seconds)} ${what}`);
    return `Of that: ${listed(said)}.`;
  },
  assumed:
    'How this machine moves is not known, so this is a common machine, between a slow and a quick one.',
  tell: 'Say how it moves',
  ask: ({ seconds }: TimeEstimate) =>
    `It should take ${durationWords(seconds)}: what did the machine say?`,
  askHint: 'Such as 4:10. A wrong time betrays a mistyped setting.',
  inside: (toldSeconds: number) => `${durationWords(toldSeconds)} lies within the band.`,
  outside: (toldSeconds: number, { lowSeconds }: TimeEstimate) =>
    `${durationWords(toldSeconds)} is ${toldSeconds < lowSeconds ? 'less' : 'more'} than the band allows: look through speeds and passes, and whether it was the right file.`,
  asTyped: 'If it ran with another setting than the card says, its shapes are not what they say.',
};
