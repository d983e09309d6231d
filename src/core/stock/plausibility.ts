import { expectedV50, priors } from '../cutmodel/priors.ts';
import type { Setting } from '../machine/setting.ts';
import { problemOf, type Problem } from '../problem.ts';

/** A setting with what it is meant to do, to be looked at for slips of a key or a unit. */
export interface SettingToQuestion {
  readonly setting: Pick<Setting, 'powerPct' | 'speedMmPerS' | 'passes'>;
  readonly material: string;
  readonly thicknessMm: number;
  /** Power at the work in watts, where it is known. */
  readonly watts?: number;
  /** Delivered fraction of the tube's rated power, 0–1. Absent: the power setting itself. */
  readonly deliveredFraction?: number;
  /** What the tube is sold as, W; absent: a strong one is taken, as the prior for the material does. */
  readonly nominalW?: number;
  /** `cuts`: someone says that it comes through. `tried`: a test cell, which may well be far off. */
  readonly claim: 'cuts' | 'tried';
}

/**
 * Energy per area of cut at the limit of full penetration, in J/mm²: southern pine by a CO2 laser of 240 W, 6.35 mm at
 * 41.95 mm/s and 25.4 mm at 6.18 mm/s. McMillin C. W. & Harry J. E. 1971, Forest Products Journal 21(10):35–37.
 */
const energyAtLimitJPerMm2 = { thin: 240 / (41.95 * 6.35), thick: 240 / (6.18 * 25.4) };

/** How far off still passes unquestioned. A factor 3 about measured energies; more about a guess. Judgement, no source. */
const allowedFactor = { energy: { cuts: 3, tried: 12 }, prior: { cuts: 5, tried: 12 } };

/**
 * Questions a setting that is so far from what cuts such a sheet that a unit or a figure was probably mistyped. It is a
 * question, never a refusal. Where the watts are known it looks at the energy per area of cut, P/(v·h); otherwise at the
 * speed against the model's prior for the material.
 */
export const questionSetting = (asked: SettingToQuestion): Problem | undefined =>
  asked.watts === undefined ? questionSpeed(asked) : questionEnergy(asked, asked.watts);

const questionEnergy = (
  { setting, thicknessMm, claim }: SettingToQuestion,
  watts: number,
): Problem | undefined => {
  const energy = (watts * setting.passes) / (setting.speedMmPerS * thicknessMm);
  const allowed = allowedFactor.energy[claim];
  const tooLittle = energyAtLimitJPerMm2.thin / energy;
  const tooMuch = energy / energyAtLimitJPerMm2.thick;
  const shown = {
    watts,
    speedMmPerS: setting.speedMmPerS,
    thicknessMm,
    energyJPerMm2: Number(energy.toPrecision(2)),
  };
  if (tooLittle > allowed)
    return problemOf('energy-too-little', { ...shown, factor: roughly(tooLittle) });
  if (tooMuch > allowed)
    return problemOf('energy-too-much', { ...shown, factor: roughly(tooMuch) });
  return undefined;
};

const questionSpeed = ({
  setting,
  material,
  thicknessMm,
  deliveredFraction = setting.powerPct / 100,
  nominalW,
  claim,
}: SettingToQuestion): Problem | undefined => {
  const usual =
    expectedV50({
      material,
      thicknessMm,
      deliveredFraction,
      ...(nominalW === undefined ? {} : { nominalW }),
    }).v50MmPerS *
    setting.passes ** priors.passesExponent.mean;
  const allowed = allowedFactor.prior[claim];
  const shown = { speedMmPerS: setting.speedMmPerS, powerPct: setting.powerPct, thicknessMm };
  const tooFast = setting.speedMmPerS / usual;
  if (tooFast > allowed)
    return problemOf('speed-looks-too-fast', { ...shown, factor: roughly(tooFast) });
  if (1 / tooFast > allowed)
    return problemOf('speed-looks-too-slow', { ...shown, factor: roughly(1 / tooFast) });
  return undefined;
};

/** Two figures are enough for "about 28 times". */
const roughly = (factor: number): number => Number(factor.toPrecision(2));
