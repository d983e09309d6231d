import type { CutStudy, StudyCell } from './cutStudy.ts';
import type { Fit } from './fit.ts';
import { links } from './links.ts';
import { cornerLossAt, marginAt } from './posterior.ts';
import type { GradeOdds } from './remarks.ts';

/** The cells of one setting that behave as if another setting had been typed. */
export interface MistypedSuspicion {
  readonly cells: readonly number[];
  readonly typed: Pick<StudyCell, 'powerPct' | 'speedMmPerS'>;
  readonly behavesLike: Pick<StudyCell, 'powerPct' | 'speedMmPerS'>;
  /** How many times likelier the grades are at the other setting. */
  readonly odds: number;
}

/**
 * Slips are rare, so the evidence must be clear before anyone is sent back to the keyboard: by `bench/mistakes` fewer than 2 in
 * 100 studies without a slip reach it.
 */
const leastOdds = 20;
const leastCells = 2;

/**
 * "D behaves like B": for each setting of a card with two graded cells or more, compares how probable its grades are at
 * its own setting and at each other setting of the same card. `odds` are those of the single cells, on the same fit.
 */
export const mistypedIn = (fitted: Fit, odds: GradeOdds): readonly MistypedSuspicion[] => {
  const groups = settingsOf(fitted.study);
  return groups.flatMap((group): readonly MistypedSuspicion[] => {
    if (group.cells.length < leastCells || !isOdd(fitted, group, odds)) return [];
    const own = probabilityAt(fitted, group.cells, group.setting);
    const rivals = groups
      .filter((other) => other !== group && other.sheet === group.sheet)
      .map((other) => ({
        setting: other.setting,
        odds: probabilityAt(fitted, group.cells, other.setting) / Math.max(own, 1e-300),
      }))
      .sort((a, b) => b.odds - a.odds);
    const [best] = rivals;
    return best && best.odds >= leastOdds
      ? [{ cells: group.cells, typed: group.setting, behavesLike: best.setting, odds: best.odds }]
      : [];
  });
};

/** Only grades that are together this improbable are looked into: the rest cannot reach {@link leastOdds}. */
const oddBelow = 1 / leastOdds;

const isOdd = ({ study }: Fit, group: SettingGroup, odds: GradeOdds): boolean =>
  group.cells.reduce((product, i) => {
    const grade = study.cells[i]?.grade;
    return product * (grade === undefined ? 1 : (odds[i]?.[grade] ?? 1));
  }, 1) < oddBelow;

interface SettingGroup {
  readonly sheet: string;
  readonly setting: Pick<StudyCell, 'powerPct' | 'speedMmPerS' | 'passes'>;
  readonly cells: readonly number[];
}

const settingsOf = ({ cells }: CutStudy): readonly SettingGroup[] => {
  const groups = new Map<string, SettingGroup>();
  cells.forEach((cell, i) => {
    if (cell.grade === undefined || cell.spoilt !== undefined) return;
    const { powerPct, speedMmPerS, passes, minPowerPct = powerPct } = cell;
    const sheet = `${cell.batch ?? ''}/${cell.sheet ?? ''}`;
    const key = [sheet, powerPct, minPowerPct, speedMmPerS, passes].join('|');
    const group = groups.get(key);
    groups.set(
      key,
      group
        ? { ...group, cells: [...group.cells, i] }
        : { sheet, setting: { powerPct, speedMmPerS, passes }, cells: [i] },
    );
  });
  return [...groups.values()];
};

/** Probability of the cells' grades together, had they been cut at `setting`; over the posterior, misreading included. */
const probabilityAt = (
  { study, compiled, posterior }: Fit,
  cells: readonly number[],
  setting: SettingGroup['setting'],
): number => {
  const lnPower = compiled.lnPowerOf(setting.powerPct);
  if (lnPower === null) return 0;
  const lnPasses = Math.log(setting.passes);
  const lnSpeed = Math.log(setting.speedMmPerS);
  const { misreading } = compiled.model.priors;
  let sum = 0;
  for (let i = 0; i < posterior.count; i += 1) {
    const link = links[posterior.link[i] ?? NaN];
    const weight = posterior.weight[i] ?? NaN;
    if (!link || weight === 0) continue;
    let product = weight;
    for (const index of cells) {
      const observation = compiled.model.observations[compiled.observationOfCell[index] ?? -1];
      if (!observation) continue;
      const margin = marginAt(posterior, i, { ...observation, lnPower, lnPasses, lnSpeed });
      const sigma = posterior.sigma[i] ?? NaN;
      const out = link.quickCdf(margin / sigma);
      const slack = cornerLossAt(posterior, i, observation) + (posterior.hangBand[i] ?? NaN);
      const through = link.quickCdf((margin + slack) / sigma);
      const grade = study.cells[index]?.grade;
      const true_ = grade === 'out' ? out : grade === 'hangs' ? through - out : 1 - through;
      product *= 0.5 * misreading + (1 - 1.5 * misreading) * Math.max(0, true_);
    }
    sum += product;
  }
  return sum;
};
