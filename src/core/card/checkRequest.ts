import type { Problem } from '../problem.ts';
import type { CardRequest } from './cardRequest.ts';
import type { CardProblem } from './cardProblem.ts';
import { cornersSpeed } from './cornersLadder.ts';
import { oddReading } from '../tube/oddReading.ts';
import { firingProblem } from './firingLimits.ts';
import { shapeBoxMm } from './testShapes.ts';

/** The most cells that one card may hold. */
const mostCells = 120;
/** The most rungs: a card with 5 speeds and 5 powers has 25, and nobody types more than 60. */
const mostRungs = 60;

/** The first thing in a request that no card can be made of; undefined where there is none. */
export const checkRequest = (request: CardRequest): Problem | undefined =>
  outOfRange(request) ??
  cornersWithoutCorners(request) ??
  tooMany(request) ??
  belowGap(request) ??
  aboveMachine(request) ??
  oddReadings(request);

const ranges = (request: CardRequest): readonly (readonly [string, number, number, number])[] => [
  ['powerPct', request.powerPct, 1, 100],
  ['sizeMm', request.sizeMm, 4, 80],
  ['sheetWidthMm', request.sheetMm[0], 20, 5000],
  ['sheetHeightMm', request.sheetMm[1], 20, 5000],
  ['thicknessMm', request.thicknessMm, 0.05, 40],
  ['cellsEach', request.cellsEach, 1, 24],
  ['settingsAtMost', request.settingsAtMost ?? 6, 1, mostRungs],
  ['entriesAtMost', request.entriesAtMost ?? 20, 1, 1000],
  ['speedMmPerS', request.speedMmPerS ?? 10, 0.1, 2000],
  ...(request.rungs ?? []).flatMap((setting): (readonly [string, number, number, number])[] => [
    ['rungs: powerPct', setting.powerPct, 1, 100],
    ['rungs: minPowerPct', setting.minPowerPct ?? 1, 0, 100],
    ['rungs: speedMmPerS', setting.speedMmPerS, 0.1, 2000],
    ['rungs: passes', setting.passes, 1, 20],
  ]),
];

const outOfRange = (request: CardRequest): CardProblem | undefined => {
  const wrong = ranges(request).find(
    ([, value, least, most]) => !(value >= least && value <= most),
  );
  if (wrong === undefined) return undefined;
  const [what, value, least, most] = wrong;
  return { code: 'card-request-out-of-range', params: { what, value, least, most } };
};

/** A circle has no corners, and at or below the start speed every place is like a corner. */
const cornersWithoutCorners = (request: CardRequest): CardProblem | undefined => {
  if (request.vary !== 'corners' || request.rungs !== undefined) return undefined;
  if (request.shape === 'circle') return { code: 'card-corners-need-corners', params: {} };
  const startMmPerS = request.machine.powerRampStartMmPerS ?? 0;
  const speedMmPerS = cornersSpeed(request);
  return speedMmPerS <= startMmPerS
    ? { code: 'card-corners-below-start', params: { speedMmPerS, startMmPerS } }
    : undefined;
};

/** Entries that are not rungs: the marks, and the window with the outline. */
const otherEntries = (request: CardRequest): number => (request.trusted === undefined ? 1 : 2);

/** How many settings the colour trial leaves for the rungs; undefined where no trial was made. */
export const rungsLeft = (request: CardRequest): number | undefined =>
  request.entriesAtMost === undefined ? undefined : request.entriesAtMost - otherEntries(request);

const tooMany = (request: CardRequest): CardProblem | undefined => {
  const rungs = request.rungs?.length ?? 1;
  const left = rungsLeft(request);
  return left !== undefined && rungs > left
    ? { code: 'card-too-many-entries', params: { rungs, most: Math.max(0, left) } }
    : undefined;
};

/** Whether a card can hold so many rungs and cells; and that there is something on it. */
export const checkCounts = (rungs: number, cells: number): CardProblem | undefined => {
  if (rungs === 0) return { code: 'card-nothing-to-vary', params: {} };
  const what = rungs > mostRungs ? 'rungs' : cells > mostCells ? 'cells' : undefined;
  if (what === undefined) return undefined;
  const [value, most] = what === 'rungs' ? [rungs, mostRungs] : [cells, mostCells];
  return { code: 'card-request-out-of-range', params: { what, value, least: 1, most } };
};

const belowGap = (request: CardRequest): CardProblem | undefined => {
  const gapMm = request.machine.bed?.gapMm;
  const { widthMm, heightMm } = shapeBoxMm(request.shape, request.sizeMm);
  return gapMm !== undefined && Math.min(widthMm, heightMm) <= gapMm
    ? {
        code: 'card-cell-below-bed-gap',
        params: {
          sizeMm: request.sizeMm,
          gapMm,
          neededMm: Math.ceil((gapMm / Math.min(widthMm, heightMm)) * request.sizeMm + 0.5),
        },
      }
    : undefined;
};

const aboveRated = (request: CardRequest, powerPct: number): Problem | undefined =>
  firingProblem(
    'cell',
    { powerPct, speedMmPerS: request.machine.speedRangeMmPerS[1], passes: 1 },
    { machine: request.machine, mayOverdrive: request.overdrive === true },
  );

const aboveMachine = (request: CardRequest): Problem | undefined => {
  const powers = request.rungs?.map((setting) => setting.powerPct) ?? [request.powerPct];
  const most = request.machine.maxPowerPct;
  const powerPct = Math.max(...powers);
  return powerPct > most
    ? { code: 'card-power-above-machine', params: { powerPct, most } }
    : aboveRated(request, powerPct);
};

/** Where the readings cannot be right, nobody knows which setting reaches the rated current. */
const oddReadings = ({ machine }: CardRequest): CardProblem | undefined => {
  const odd = oddReading(machine);
  const ratedMa = machine.ratedCurrentMa;
  return odd === undefined || ratedMa === undefined
    ? undefined
    : { code: 'card-tube-readings-odd', params: { ...odd, ratedMa } };
};
