import { seededRandom } from '../../num/seededRandom.ts';
import type { Setting } from '../machine/setting.ts';
import { done, problemOf, refused, type Outcome } from '../problem.ts';
import type { Card, Cell, Rung } from './card.ts';
import type { CardRequest } from './cardRequest.ts';
import { cellLines } from './cellLines.ts';
import { cardSettings } from './cardSettings.ts';
import { checkCounts, checkRequest } from './checkRequest.ts';
import type { CardProblem } from './cardProblem.ts';
import { overdrives } from './firingLimits.ts';
import { fitPower } from './fitPower.ts';
import { holdToLimits } from './holdToLimits.ts';
import { settingsWanted } from './ladders.ts';
import { cardLayout, type CardLayout } from './cardLayout.ts';
import { wordLettering } from './lettering.ts';
import { textWidthMm } from './letters.ts';
import { rungLetter } from './rungLetter.ts';
import { drawOrder, factorsOf } from './rungOrder.ts';
import { scoringGuess } from './scoring.ts';
import { spreadCells } from './spread.ts';
import { shapeBoxMm, shapeLengthMm, testShapes } from './testShapes.ts';
import { tooWeak } from './tooWeak.ts';

/** A card, and what is to be said of it: what was changed in the request, what it lacks. */
export interface DesignedCard {
  readonly card: Card;
  readonly remarks: readonly CardProblem[];
}

/**
 * Designs a card: the settings that teach (or those said outright, held to the ceiling), in an order drawn at random,
 * their cells spread over the smallest card that fits the sheet. Pure: equal requests give equal cards. A few ms for 24
 * cells.
 */
export const designCard = (asked: CardRequest): Outcome<DesignedCard> => {
  const problem = checkRequest(asked);
  if (problem !== undefined) return { ok: false, problem };
  const fitted = fitPower(asked);
  if (!fitted.ok) return fitted;
  const { request } = fitted.value;

  const { settings, remarks } = cardSettings(request);
  const scoring = request.scoring ?? scoringGuess(request);
  const beyond = holdToLimits(request, { cells: settings, marks: scoring });
  if (beyond !== undefined) return { ok: false, problem: beyond };
  const weak = tooWeak(request, settings);
  if (weak.problem !== undefined) return { ok: false, problem: weak.problem };
  // One setting where several were asked for varies nothing.
  if (settings.length === 1 && request.rungs === undefined && settingsWanted(request) > 1)
    return refused('card-nothing-to-vary');
  const cellCount = settings.length * request.cellsEach;
  const tooMany = checkCounts(settings.length, cellCount);
  if (tooMany !== undefined) return { ok: false, problem: tooMany };

  const random = seededRandom(request.seed);
  const rungs = drawOrder(settings, random).map((setting, i): Rung => ({
    letter: rungLetter(i),
    setting,
  }));
  const layout = cardLayout({
    cells: cellCount,
    shapeBox: shapeBoxMm(request.shape, request.sizeMm),
    wordsWidthMm: widestWords(rungs, request.cellsEach),
    thicknessMm: request.thicknessMm,
    sheetMm: within(request),
    window: request.trusted !== undefined,
  });
  if (layout === undefined) {
    return refused('card-bigger-than-sheet', {
      cells: cellCount,
      sizeMm: request.sizeMm,
      sheetWidthMm: within(request)[0],
      sheetHeightMm: within(request)[1],
    });
  }
  const cells = placeCells(request, rungs, layout, random);
  return done({
    card: cardOf({ ...request, scoring }, rungs, cells, layout, random.integer(4)),
    remarks: [...fitted.value.remarks, ...weak.remarks, ...remarks, ...remarksOn(request)],
  });
};

/** As much of the piece as the bed takes. */
const within = ({ sheetMm: [width, height], machine: { bed } }: CardRequest) =>
  [Math.min(width, bed?.widthMm ?? Infinity), Math.min(height, bed?.heightMm ?? Infinity)] as const;

const widestWords = (rungs: readonly Rung[], cellsEach: number): number =>
  Math.max(
    ...rungs.flatMap(({ letter, setting }) =>
      cellLines(setting, `${letter}${cellsEach}`).map((line) => textWidthMm(line, wordLettering)),
    ),
  );

const placeCells = (
  request: CardRequest,
  rungs: readonly Rung[],
  layout: CardLayout,
  random: ReturnType<typeof seededRandom>,
): readonly Cell[] => {
  const byRung = rungs.flatMap((_, r) => Array.from({ length: request.cellsEach }, () => r));
  const order = request.order === 'free' ? random.shuffle(byRung) : byRung;
  const spots = spreadCells(
    {
      spots: layout.spots,
      rungs: order,
      factors: factorsOf(rungs.map((rung) => rung.setting)),
      neighbourMm: layout.neighbourMm,
    },
    random,
  );
  const counts = new Map<number, number>();
  return spots.map(([xMm, yMm], i): Cell => {
    const r = order[i] ?? NaN;
    const number = (counts.get(r) ?? 0) + 1;
    counts.set(r, number);
    const rung = rungLetter(r);
    return { id: `${rung}${number}`, rung, xMm: rounded(xMm), yMm: rounded(yMm) };
  });
};

const rounded = (mm: number): number => Number(mm.toFixed(3));

const notchCorners = ['lower-left', 'lower-right', 'upper-left', 'upper-right'] as const;

const cardOf = (
  request: CardRequest & { readonly scoring: Setting },
  rungs: readonly Rung[],
  cells: readonly Cell[],
  layout: CardLayout,
  doubled: number,
): Card => ({
  version: 1,
  code: request.code,
  origin: 'designed',
  rungs,
  cells,
  shape: request.shape,
  sizeMm: request.sizeMm,
  shapeLengthMm: rounded(shapeLengthMm(request.shape, request.sizeMm)),
  widthMm: layout.widthMm,
  heightMm: layout.heightMm,
  scoring: request.scoring,
  ...(request.trusted === undefined ? {} : { trusted: request.trusted }),
  outline: request.trusted === undefined ? 'none' : (request.outline ?? 'last'),
  doubledNotch: notchCorners[doubled] ?? 'lower-left',
  places: layout.places,
  believed: believedAt(request),
  ...(request.overdrive === true &&
  rungs.some(({ setting }) => overdrives(request.machine, setting))
    ? { overdrive: true as const }
    : {}),
  ...(request.order === 'free' ? { order: 'free' as const } : {}),
  ...(request.batch === undefined ? {} : { batch: request.batch }),
  ...(request.sheet === undefined ? {} : { sheet: request.sheet }),
  thicknessMm: request.thicknessMm,
});

const believedAt = ({ believed, powerPct }: CardRequest): NonNullable<Card['believed']> => {
  const { v50MmPerS, powerExponent = 1 } = believed(powerPct);
  return {
    powerPct,
    v50MmPerS: rounded(v50MmPerS),
    ...(powerExponent === 1 ? {} : { powerExponent: Math.max(0.001, rounded(powerExponent)) }),
  };
};

/** Nobody said how strong the tube is, and nothing that was cut tells. */
const strengthUnsaid = ({ machine, believed, powerPct }: CardRequest): boolean =>
  machine.nominalW === undefined && machine.slowCut === undefined && believed(powerPct).lnSd > 0.7;

const remarksOn = (request: CardRequest): readonly CardProblem[] => [
  ...(strengthUnsaid(request) ? [problemOf('card-strength-unsaid')] : []),
  ...(testShapes[request.shape].flatters ? [problemOf('card-circle-flatters')] : []),
  ...(request.scoring === undefined ? [problemOf('card-scoring-guessed')] : []),
  ...(request.trusted === undefined ? [problemOf('card-no-trusted-setting')] : []),
  ...(request.order === 'free' ? [problemOf('card-order-only-in-gcode')] : []),
];
