import { lastXAtOrBelow } from '../../num/monotoneCubic.ts';
import type { Setting } from '../machine/setting.ts';
import { andThen, done, refused, type Outcome } from '../problem.ts';
import { doseOf, settingForDose } from './doseLadder.ts';
import { markProblem, type MarkLimits } from './markLimits.ts';
import { markOfStep, type MarkStrip } from './markStrip.ts';
import { makingBeside } from './proposeMarks.ts';
import { toneAt, toneCurve, type Tone, type ToneCurve } from './toneCurve.ts';

/** How the lightness of shades was read. */
export const toneReadings = ['meter', 'card', 'photo'] as const;
export type ToneReading = (typeof toneReadings)[number];

/** How many shades where nobody says, and at most. */
export const usualShades = 5;
export const shadesAtMost = 16;

/** Standard uncertainty of one reading with the grain under it, L*. Common practice, no source; of a photograph what its own uncertainties come to. */
const readingL: Readonly<Record<ToneReading, number>> = { meter: 1.5, card: 4, photo: 2.5 };

/** What is seen on a strip, and how many shades are wanted of it. */
export interface ShadesRead {
  /** CIE L* of each step, the gentlest first; undefined: not read. */
  readonly lightness: readonly (number | undefined)[];
  readonly by: ToneReading;
  /** Two or more. */
  readonly count: number;
}

/** A setting, and the shade that it comes out as. */
interface Shade extends Tone {
  readonly setting: Setting;
  readonly dose: number;
}

export interface EvenShades {
  readonly curve: ToneCurve;
  /** Of each step that was read. */
  readonly reads: readonly { readonly dose: number; readonly lightness: number }[];
  /** From the gentlest to the strongest. */
  readonly shades: readonly Shade[];
}

/**
 * Settings whose shades lie evenly apart in L*, from the gentlest step that was read to the strongest: never beyond them, so
 * that none is stronger than what was marked. What a setting is rounded to is what its shade is said of.
 * Refuses: what `toneCurve` refuses; `marks-no-room`; and what a mark is refused for.
 */
export const evenShades = (
  strip: Pick<MarkStrip, 'kind' | 'lineSpacingMm' | 'settings'>,
  { lightness, by, count }: ShadesRead,
  cut: Setting,
  limits: MarkLimits,
): Outcome<EvenShades> => {
  const { settings } = strip;
  const making = {
    ...makingBeside(cut, limits, markOfStep(strip, cut)),
    // The strip's own speeds: faster, the same energy would come from a power that nobody looked at.
    fastestMmPerS: Math.max(...settings.map(({ speedMmPerS }) => speedMmPerS)),
  };
  const reads = settings.flatMap((setting, i) => {
    const seen = lightness[i];
    return seen === undefined ? [] : [{ dose: doseOf(setting, making), lightness: seen }];
  });
  return andThen(toneCurve(reads, readingL[by]), (curve) => {
    const { rising } = curve;
    const [first = NaN, last = NaN] = [rising.y[0], rising.y.at(-1)];
    const shades: Shade[] = [];
    for (let i = 0; i < count; i += 1) {
      const wanted = first + ((last - first) * i) / (count - 1);
      const dose = Math.exp(
        i === 0
          ? (rising.x[0] ?? NaN)
          : ((i === count - 1 ? undefined : lastXAtOrBelow(rising, wanted)) ??
              rising.x.at(-1) ??
              NaN),
      );
      const setting = stepOfDose(settings, dose, making) ?? settingForDose(dose, making);
      if (setting === undefined) return refused('marks-no-room');
      const beyond = markProblem(markOfStep(strip, setting), limits);
      if (beyond !== undefined) return { ok: false, problem: beyond };
      const given = doseOf(setting, making);
      shades.push({ setting, dose: given, ...toneAt(curve, given) });
    }
    return done({ curve, reads, shades });
  });
};

/** The step of the strip that got this dose: what was marked is said as it was marked. */
const stepOfDose = (
  settings: readonly Setting[],
  dose: number,
  making: Parameters<typeof doseOf>[1],
): Setting | undefined =>
  settings.find((setting) => Math.abs(doseOf(setting, making) / dose - 1) < 1e-6);
