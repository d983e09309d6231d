import { airKey } from '../machine/air.ts';
import { referenceLengthsIn } from '../reading/referenceLengths.ts';
import type { CutStudy } from './cutStudy.ts';
import {
  countedBySetting,
  heatChanges,
  heatFrom,
  isOnePower,
  logistic,
  lognormal,
  weightsOf,
  type HeatSpot,
} from './heat.ts';
import { priors } from './priors.ts';
import { asRead } from './reading.ts';

/** What shapes that welded back behind the beam let expect at other settings of one pass. */
export interface Welding {
  /** The share of what is cut through at a setting that stays open, 0–1; `lengths`: of the part, over that of a test shape. */
  readonly openAt: (spot: HeatSpot, lengths: number) => number;
  /** How many welded back, and how many of one pass were cut through in all. */
  readonly welded: number;
  readonly through: number;
}

/** A shape that welded is taken for one that did not, and the other way, with half this probability. By judgement, no source. */
const misread = 0.01;

/**
 * Over how much heat the change is spread, in ln: what scatters the changeover of a sheet scatters this one, so its prior is
 * that of σ, as a logistic has it. By judgement, no source.
 */
const spreads = lognormal(
  6,
  (Math.sqrt(3) / Math.PI) * Math.exp(priors.lnSigma.mean),
  priors.lnSigma.sd,
);

/**
 * Acrylic that is cut too slowly closes again behind the beam: too slow is a failure too. Whether it does is a logistic in the
 * heat of the cut, ln heat = c·ln power − ln speed, which only shapes tell that were seen to have welded, beside those that came
 * out and parts of orders that did: all cut in one pass with the present air. Nothing of it is in the changeover, since a shape that
 * welded says nothing of it. Undefined where none was seen: nobody is warned of what the material does not do.
 */
export const weldingIn = (study: CutStudy): Welding | undefined => {
  const air = airKey(study.cells.at(-1)?.air ?? study.tallies.at(-1)?.setting.air);
  const shapes = study.cells.flatMap((cell) => {
    const { powerPct, speedMmPerS, count = 1, grade, spoilt } = cell;
    if (cell.passes !== 1 || airKey(cell.air) !== air) return [];
    const isWelded = spoilt === 'welded-back';
    if (!isWelded && (grade !== 'out' || spoilt !== undefined)) return [];
    return [{ powerPct, speedMmPerS, count, way: isWelded ? welded : open }];
  });
  if (shapes.every(({ way }) => way === open)) return undefined;
  const parts = study.tallies.flatMap(({ setting, out, partLengthMm }) => {
    if (setting.passes !== 1 || airKey(setting.air) !== air || out === 0) return [];
    const { powerPct, speedMmPerS } = setting;
    // A long part that is open is open in each of its lengths.
    const count = out * referenceLengthsIn(partLengthMm);
    return [{ powerPct, speedMmPerS, count, way: open }];
  });
  const cuts = [...shapes, ...parts];
  const settings = countedBySetting(cuts, 2);
  const heat = heatFrom(settings);
  const changes = heatChanges(isOnePower(settings), spreads);
  const logs = Float64Array.from(changes, ({ at, spread, exponent, prior }) =>
    settings.reduce((log, { counts, ...spot }) => {
      const closes = logistic((heat(spot, exponent) - at) / spread);
      const [ofOpen = NaN, ofWelded = NaN] = counts;
      return (
        log +
        (ofOpen === 0 ? 0 : ofOpen * Math.log(asRead(misread, 1 - closes))) +
        (ofWelded === 0 ? 0 : ofWelded * Math.log(asRead(misread, closes)))
      );
    }, Math.log(prior)),
  );
  const weight = weightsOf(logs);
  const counted = (of: number): number =>
    shapes.reduce((sum, { way, count }) => (way === of ? sum + count : sum), 0);
  return {
    openAt: (spot, lengths) =>
      Math.min(
        1,
        changes.reduce((sum, { at, spread, exponent }, i) => {
          const stays = logistic((at - heat(spot, exponent)) / spread) ** lengths;
          return sum + stays * (weight[i] ?? NaN);
        }, 0),
      ),
    welded: counted(welded),
    through: counted(welded) + counted(open),
  };
};

const [open, welded] = [0, 1];
