import { median } from '../../num/median.ts';
import { airKey, type Air } from '../machine/air.ts';
import { deliveryOf } from '../tube/deliveredPower.ts';
import { cornerPowerPct } from '../machine/setting.ts';
import { isFlaw } from '../reading/grade.ts';
import { referenceLengthMm } from '../reading/promise.ts';
import { referenceLengthsIn } from '../reading/referenceLengths.ts';
import { beliefsOf, type Beliefs } from './beliefs.ts';
import type { CutStudy, StudyCell } from './cutStudy.ts';
import type { HabitBelief, Model, Observation, ObservedOutcome } from './model.ts';
import { expectedV50, priors, type ExpectedV50 } from './priors.ts';
import { strengthOf } from './strengthOf.ts';
import { weldingIn, type Welding } from './welding.ts';

/** A study made ready for the posterior, and what is needed to carry its answer back to settings. */
export interface CompiledStudy {
  readonly model: Model;
  /** ln of the delivered fraction at P0, to which powers are related. */
  readonly lnDeliveryAtP0: number;
  readonly p0Pct: number;
  /** ln(P/P0) of a setting; null where the tube does not fire there or nobody knows. */
  readonly lnPowerOf: (powerPct: number) => number | null;
  /** Air level, batch and sheet of the last thing cut, as indices into the posterior's effects; −1: none. */
  readonly current: { readonly air: number; readonly batch: number; readonly sheet: number };
  /** Which observation each study cell became; −1: unread, or not usable. */
  readonly observationOfCell: readonly number[];
  /** The same for each cell of earlier sheets, with how many shapes it stands for. */
  readonly observationOfEarlier: readonly CountedObservation[];
  /** What each tally became: how many parts stand in which observation. */
  readonly observationsOfTally: readonly (readonly CountedObservation[])[];
  /** Cells whose power setting says nothing: below firing, or beyond the tube's readings. */
  readonly unusableCells: readonly number[];
  /** Cells that ran wholly on the power in corners, being no faster than the machine's start speed. */
  readonly slowCells: readonly number[];
  /** Air levels in the order of their effects, the commonest (which has none) first. */
  readonly airLevels: readonly string[];
  /** Absent: nothing was seen to weld back. */
  readonly welding?: Welding;
}

/** Some of the shapes of one observation. */
interface CountedObservation {
  readonly observation: number;
  readonly count: number;
}

interface Cut {
  readonly outcome: ObservedOutcome;
  readonly count: number;
  readonly powerPct: number;
  readonly minPowerPct: number;
  readonly speedMmPerS: number;
  readonly passes: number;
  readonly thicknessMm: number;
  readonly lengthMm: number;
  readonly air: Air | undefined;
  readonly batch: string;
  readonly sheet: string;
  /** A part of an order. */
  readonly counted: boolean;
  /** Where it stands among the study's cells, its tallies or its earlier cells. */
  readonly of: 'cell' | 'tally' | 'earlier';
  readonly index: number;
}

/** What the study starts from, and weights and scales of `priors.ts`, in the form the model takes them. */
const modelPriors = ({ v50MmPerS, lnSd }: ExpectedV50, beliefs: Beliefs): Model['priors'] => ({
  lnV50: { mean: Math.log(v50MmPerS), sd: lnSd },
  powerExponent: beliefs.powerExponent,
  lnSigma: beliefs.lnSigma,
  lnHangBand: beliefs.lnHangBand,
  thicknessExponent: priors.thicknessExponent,
  passesExponent: priors.passesExponent,
  cornersExponent: priors.cornersExponent,
  airSd: priors.airSd,
  flawsPerMetre: beliefs.flawsPerMetre,
  sheetSd: beliefs.sheetSd,
  batchSd: { mode: 0, scale: priors.batchSdScale },
  misreading: priors.misreading,
  miscounting: priors.miscounting,
  flawsOverlooked: priors.flawsOverlooked,
});

const fallbackPowerPct = 30;

/** Turns cells, tallies and habit into observations; equal ones are merged. O(cells). */
export const compileStudy = (study: CutStudy): CompiledStudy => {
  const delivery = deliveryOf(study.machine);
  const cuts = cutsOf(study);
  const own = cuts.filter(({ of }) => of !== 'earlier');
  const p0Pct =
    study.ask.powerPct ??
    median(own.map((cut) => cut.powerPct)) ??
    study.habit?.powerPct ??
    median(cuts.map((cut) => cut.powerPct)) ??
    fallbackPowerPct;
  const atP0 = delivery(p0Pct);
  const lnDeliveryAtP0 = Math.log(atP0 !== null && atP0 > 0 ? atP0 : p0Pct / 100);
  const lnPowerOf = (powerPct: number): number | null => {
    const fraction = delivery(powerPct);
    return fraction === null || fraction <= 0 ? null : Math.log(fraction) - lnDeliveryAtP0;
  };

  const airLevels = airsByFrequency(cuts);
  const last = own.at(-1);
  const present = study.presentBatch ?? last?.batch ?? '';
  const batches = distinct([...cuts.map((cut) => cut.batch), present]);
  const sheets = distinct(cuts.map((cut) => sheetKey(cut)));
  const withBatches = batches.length > 1 || study.promise.for === 'newBatch';

  const observations: Observation[] = [];
  const seen = new Map<string, number>();
  const observationOfCell = study.cells.map(() => -1);
  const observationOfEarlier = (study.history ?? []).map((): CountedObservation => ({
    observation: -1,
    count: 0,
  }));
  const observationsOfTally = study.tallies.map((): CountedObservation[] => []);
  const unusableCells: number[] = [];
  const slowCells: number[] = [];
  const rampStart = study.machine.powerRampStartMmPerS ?? 0;
  for (const cut of cuts) {
    const slow = cut.minPowerPct < cut.powerPct && cut.speedMmPerS <= rampStart;
    const lnPower = lnPowerOf(slow ? cut.minPowerPct : cut.powerPct);
    const lnLeast = lnPowerOf(cut.minPowerPct);
    if (lnPower === null || lnLeast === null) {
      if (cut.of === 'cell') unusableCells.push(cut.index);
      continue;
    }
    if (slow && cut.of === 'cell') slowCells.push(cut.index);
    const observation: Observation = {
      outcome: cut.outcome,
      count: cut.count,
      lnSpeed: Math.log(cut.speedMmPerS),
      lnPower,
      lnThickness: Math.log(cut.thicknessMm / study.stock.thicknessMm),
      lnPasses: Math.log(cut.passes),
      lnCorners: Math.max(0, lnPower - lnLeast),
      lengths: referenceLengthsIn(cut.lengthMm),
      lengthM: cut.lengthMm / 1000,
      counted: cut.counted,
      air: airLevels.indexOf(airKey(cut.air)) - 1,
      batch: withBatches ? batches.indexOf(cut.batch) : -1,
      sheet: sheets.indexOf(sheetKey(cut)),
    };
    const key = Object.values({ ...observation, count: 0 }).join('|');
    const already = seen.get(key);
    const index = already ?? observations.length;
    if (already === undefined) {
      seen.set(key, index);
      observations.push(observation);
    } else {
      const before = observations[index];
      if (before) observations[index] = { ...before, count: before.count + cut.count };
    }
    if (cut.of === 'cell') observationOfCell[cut.index] = index;
    else if (cut.of === 'earlier')
      observationOfEarlier[cut.index] = { observation: index, count: cut.count };
    else observationsOfTally[cut.index]?.push({ observation: index, count: cut.count });
  }

  const expected = expectedV50({
    material: study.stock.material,
    thicknessMm: study.stock.thicknessMm,
    deliveredFraction: Math.exp(lnDeliveryAtP0),
    ...strengthOf(study.machine),
  });
  const habit = habitBelief(study, lnPowerOf);
  const welding = weldingIn(study);
  return {
    model: {
      priors: modelPriors(expected, beliefsOf(study)),
      observations,
      ...(habit ? { habit } : {}),
      airLevels: Math.max(0, airLevels.length - 1),
      batches: withBatches ? batches.length : 0,
      sheets: sheets.length,
    },
    lnDeliveryAtP0,
    p0Pct,
    lnPowerOf,
    current: {
      air: last ? airLevels.indexOf(airKey(last.air)) - 1 : -1,
      batch: withBatches ? batches.indexOf(present) : -1,
      sheet: last?.batch === present ? sheets.indexOf(sheetKey(last)) : -1,
    },
    observationOfCell,
    observationOfEarlier,
    observationsOfTally,
    unusableCells,
    slowCells,
    airLevels,
    ...(welding === undefined ? {} : { welding }),
  };
};

/** Cells come last, so that "the last cell" is the last cut where there is any. */
const cutsOf = (study: CutStudy): readonly Cut[] => [
  ...(study.history ?? []).flatMap((cell, i) => cutOf(study, cell, 'earlier', i)),
  ...study.tallies.flatMap((tally, i) => {
    const common = {
      ...tally.setting,
      minPowerPct: leastPower(tally.setting),
      air: tally.setting.air,
      thicknessMm: tally.thicknessMm ?? study.stock.thicknessMm,
      lengthMm: tally.partLengthMm,
      batch: tally.batch ?? '',
      sheet: tally.sheet ?? `order ${String(i + 1)}`,
      counted: true,
      of: 'tally' as const,
      index: i,
    };
    const counts: readonly (readonly [ObservedOutcome, number])[] = [
      ['out', tally.out],
      ['hangs', tally.hangs],
      ['stays', tally.stays],
      ['flaw', tally.spoilt],
    ];
    return counts
      .filter(([, count]) => count > 0)
      .map(([outcome, count]): Cut => ({ ...common, outcome, count }));
  }),
  ...study.cells.flatMap((cell, i) => cutOf(study, cell, 'cell', i)),
];

const cutOf = (
  study: CutStudy,
  cell: StudyCell,
  of: 'cell' | 'earlier',
  index: number,
): readonly Cut[] => {
  const outcome =
    cell.spoilt === undefined ? cell.grade : isFlaw(cell.spoilt) ? ('flaw' as const) : undefined;
  if (outcome === undefined) return [];
  return [
    {
      outcome,
      count: cell.count ?? 1,
      powerPct: cell.powerPct,
      minPowerPct: leastPower(cell),
      speedMmPerS: cell.speedMmPerS,
      passes: cell.passes,
      thicknessMm: cell.thicknessMm ?? study.stock.thicknessMm,
      lengthMm: cell.shapeLengthMm ?? referenceLengthMm,
      air: cell.air,
      // An earlier sheet's batch is never taken for the present one, whatever it is called.
      batch: of === 'earlier' ? `earlier ${cell.batch ?? ''}` : (cell.batch ?? ''),
      sheet: cell.sheet ?? '',
      counted: cell.counted === true,
      of,
      index,
    },
  ];
};

/** A controller takes no more in corners than at full speed. */
const leastPower = (cut: Pick<StudyCell, 'powerPct' | 'minPowerPct'>): number =>
  Math.min(cut.powerPct, cornerPowerPct(cut));

const habitBelief = (
  { habit }: CutStudy,
  lnPowerOf: (powerPct: number) => number | null,
): HabitBelief | undefined => {
  if (!habit) return undefined;
  const lnPower = lnPowerOf(habit.powerPct);
  if (lnPower === null) return undefined;
  return {
    lnPower,
    mean: Math.log(habit.speedMmPerS) + priors.habit.shift[habit.comesOut],
    sd: priors.habit.sd,
  };
};

const sheetKey = (cut: Cut): string => `${cut.batch}\u0000${cut.sheet}`;

const distinct = (keys: readonly string[]): readonly string[] => [...new Set(keys)];

/** Levels of air, the commonest first; an order is one cut, however many parts it has. */
const airsByFrequency = (cuts: readonly Cut[]): readonly string[] => {
  const counts = new Map<string, number>();
  for (const cut of cuts) {
    const key = airKey(cut.air);
    counts.set(key, (counts.get(key) ?? 0) + (cut.of === 'tally' ? 1 : cut.count));
  }
  return [...counts].sort((a, b) => b[1] - a[1]).map(([key]) => key);
};
