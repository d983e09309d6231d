import { seededRandom } from '../../num/seededRandom.ts';
import type { BedTest } from '../bed/bedTest.ts';
import { fourCorners } from '../bed/fourCorners.ts';
import type { FitAnswer } from '../cutmodel/fitAnswer.ts';
import type { Bed, Machine } from '../machine/machine.ts';
import type { Metering } from '../metering/metering.ts';
import type { Setting } from '../machine/setting.ts';
import { exampleMachineId } from './exampleMachine.ts';
import { virtualWorkshop, type WorkshopTraits } from './virtualWorkshop.ts';

/** What a meter shows: tenths of a mA, and a needle that is not read twice alike. */
const needleSdMa = 0.08;

/** Two rounds up the settings that the machine's curve was made from, and the step at which the tube stayed dark. */
export const exampleMetering = (
  machine: Machine,
  about: { readonly id: string; readonly at: string; readonly seed: number },
): Metering => {
  const random = seededRandom(about.seed);
  const points = machine.tubePoints ?? [];
  const read = points.map(({ powerPct, currentMa }) => ({
    powerPct,
    currentMa: Number((currentMa + needleSdMa * random.normal()).toFixed(1)),
  }));
  return {
    version: 1,
    id: about.id,
    at: about.at,
    isExample: true,
    machineId: exampleMachineId,
    ...(machine.name === undefined ? {} : { machine: machine.name }),
    ...(machine.ratedCurrentMa === undefined ? {} : { ratedCurrentMa: machine.ratedCurrentMa }),
    readings: [{ powerPct: 4, currentMa: 0 }, ...read, ...points],
    waterC: 20,
    note: 'Invented, to look at.',
  };
};

interface CornersCut {
  readonly machine: Machine;
  readonly bed: Bed;
  readonly cuts: WorkshopTraits;
  readonly answer: FitAnswer;
  readonly at: string;
}

/** So many cells at each place: enough to clear a bed that cuts alike, as a rule. */
const cellsEach = 12;

/** The four corners of the invented bed, cut where two thirds come out, and read. */
export const exampleCorners = ({ machine, bed, cuts, answer, at }: CornersCut): BedTest => {
  const { sigma, hangBand, lnV50At } = answer.posterior;
  const exact = Math.exp(lnV50At.mean - 0.43 * sigma.mean);
  const setting: Setting = {
    powerPct: lnV50At.powerPct,
    speedMmPerS: Math.round(2 * exact) / 2,
    passes: 1,
  };
  const job = fourCorners({
    bed,
    setting,
    shape: 'star',
    sizeMm: 14,
    cellsEach,
    marginMm: 20,
    limits: { machine },
  });
  if (!job.ok) throw new Error(`The example's corners cannot be drawn: ${job.problem.code}`);
  const workshop = virtualWorkshop(cuts, seededRandom(27));
  const { cells } = job.value;
  const grades = workshop.cutCard(cells.map(({ xMm, yMm }) => ({ ...setting, xMm, yMm })));
  return {
    version: 1,
    id: 'example-corners',
    at,
    isExample: true,
    machineId: exampleMachineId,
    ...(machine.name === undefined ? {} : { machine: machine.name }),
    bed,
    setting,
    scatter: { sigma: sigma.mean, hangBand: hangBand.mean },
    cells: cells.flatMap(({ id, place }, i) => {
      const grade = grades[i];
      return grade === undefined ? [] : [{ id, place, grade }];
    }),
    note: 'Invented, to look at. Nobody ever cut this.',
  };
};
