import type { PricedWay } from '../../../core/cost/waysToCut.ts';
import { durationWords, settingWords } from '../terms/figures.ts';

const money = (value: number): string => {
  if (value >= 99.5) return value.toFixed(0);
  return value.toFixed(value >= 9.95 ? 1 : 2);
};

/** What a part costs. */
export const costText = {
  title: 'What a part costs',
  order: 'An order of so many parts',
  ways: {
    gentle: 'Gentle and slow',
    chosen: 'As recommended',
    hard: 'Strong and fast',
  } satisfies Record<PricedWay['kind'], string>,
  setting: settingWords,
  caption: 'Time of one part, and what 100 parts cost, sheet included in all.',
  way: 'Way to cut',
  seconds: 'A part',
  time: 'Time',
  knife: 'Knife',
  tube: 'Tube',
  total: 'In all',
  duration: (seconds: number) => durationWords(seconds),
  money,
  cross: (perHour: number) =>
    `Gentle and hard cost the same where an hour is worth ${money(perHour)}: below that spare the tube, above it spare the time.`,
  crossNever: (gentle: boolean) =>
    `${gentle ? 'Gentle and slow' : 'Hard and fast'} is cheaper whatever an hour is worth.`,
  assumed:
    'Your figures, in your own money; none of them is measured. How a tube’s life falls with its current is common practice, no source: ask the maker of yours.',
  noCurrent:
    'Without meter readings the power setting stands for the current, so what the tube costs is a rough guess.',
  perHour: 'An hour of machine and keeper is worth',
  tubePrice: 'A new tube costs',
  tubeHours: 'Hours a tube lives at its rated current',
  exponent: 'Life falls with current to the power of',
  sheetPerPart: 'Sheet for one part',
  knifeSeconds: 'Seconds to free a part with a knife',
  timeOnly: 'Time of the cut alone.',
};
