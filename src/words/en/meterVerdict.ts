import type { CurveChange } from '../../core/metering/compareMeterings.ts';
import type { Suspect, WhereToLook } from '../../core/metering/whereToLook.ts';
import { currentWords, powerWords } from './terms/figures.ts';
import { looks } from './terms/looks.ts';

const pct = (value: number): string => `${String(Number(Math.abs(value).toFixed(1)))}\u202f%`;

const bandOf = ({ lowPct, highPct }: CurveChange): string =>
  `between ${signed(lowPct - 100)} and ${signed(highPct - 100)}\u202f%`;

const signed = (value: number): string => {
  const rounded = Number(value.toFixed(1));
  if (rounded === 0) return '0';
  return rounded < 0 ? `\u2212${String(-rounded)}` : `+${String(rounded)}`;
};

const worst = ({ most }: CurveChange): string =>
  `most at ${powerWords(most.powerPct)}: ${currentWords(most.beforeMa)} then, ${currentWords(most.nowMa)} now`;

const changes: Readonly<Record<CurveChange['how'], (change: CurveChange) => string>> = {
  lower: (change) =>
    `The tube draws ${pct(100 - change.levelPct)} less than it did at the same settings (${bandOf(change)}); ${worst(change)}. That is beyond noise.`,
  higher: (change) =>
    `The tube draws ${pct(change.levelPct - 100)} more than it did at the same settings (${bandOf(change)}); ${worst(change)}. That is beyond noise.`,
  bent: (change) => `The curve has another shape than then, beyond noise; ${worst(change)}.`,
  'fires-later': () =>
    'The tube begins to fire at a higher setting than then: it stays dark where it used to fire.',
  'fires-sooner': () =>
    'The tube begins to fire at a lower setting than then: it fires where it used to stay dark.',
  same: (change) =>
    `The curve is as it was: ${signed(change.levelPct - 100)}\u202f% on average, ${bandOf(change)}. Nothing beyond noise that would matter.`,
};

const verdicts: Readonly<Record<WhereToLook['at'], string>> = {
  current:
    'What the tube is given has changed. The supply sets the current, so this points at controller, wiring or supply rather than at optics.',
  light:
    'The tube is given the same and cuts less. An old tube draws the same and gives less light, and dirt draws nothing: this points at optics, focus, water, air or the tube, not at supply or wiring.',
  nothing: 'Neither the current nor the cuts have changed. There is nothing to look for.',
  'cuts-first':
    'The current has not changed. Whether anything is wrong, the cuts must tell: do parts still come out as they did?',
  'read-again':
    'The current has changed and the cuts have not, which seldom go together. Read the meter once more before you look for a fault.',
};

/** Two meterings that disagree with the cuts ask whether they were read well, not for one more reading of the tube. */
const ownReading = [
  'Meter',
  'Same scale, same eye, needle at zero before firing? Read three settings again.',
] as const;

/** What two meterings say, in sentences. Common practice where they say what points where; no source. */
export const meterVerdictText = {
  change: (change: CurveChange): string => changes[change.how](change),
  verdict: ({ at }: WhereToLook): string => verdicts[at],
  suspect: (suspect: Suspect): readonly [what: string, how: string] =>
    suspect === 'meter' ? ownReading : looks[suspect],
};
