import { seededRandom } from '../../num/seededRandom.ts';
import type { Setting } from '../machine/setting.ts';
import { settingKey } from '../machine/setting.ts';
import { done, refused, type Outcome, type Problem } from '../problem.ts';
import type { Card, Cell, Rung } from './card.ts';
import type { CardRequest } from './cardRequest.ts';
import { cellLines } from './cellLines.ts';
import { energyCeiling, energyRatio, slowestAllowed } from './ceiling.ts';
import { checkRequest } from './checkRequest.ts';
import { settingsFor } from './ladders.ts';
import { layOut, type CardLayout } from './layout.ts';
import { wordLettering } from './lettering.ts';
import { textWidthMm } from './letters.ts';
import { drawOrder, factorsOf } from './rungOrder.ts';
import { scoringGuess } from './scoring.ts';
import { spreadCells } from './spread.ts';
import { stepNotSlower } from './steps.ts';
import { shapeBoxMm, shapeLengthMm, testShapes } from './testShapes.ts';

/** A card, and what is to be said of it: what was changed in the request, what it lacks. */
export interface DesignedCard {
  readonly card: Card;
  readonly remarks: readonly Problem[];
}

const letters = 'ABCDEFGHIJKLMNOPQRST';

/**
 * Designs a card: the settings that teach (or those said outright, held to the ceiling), in an order drawn at random,
 * their cells spread over the smallest card that fits the sheet. Pure: equal requests give equal cards. A few ms for 24
 * cells.
 */
export const designCard = (request: CardRequest): Outcome<DesignedCard> => {
  const problem = checkRequest(request);
  if (problem !== undefined) return { ok: false, problem };

  const { settings, remarks } = rungSettings(request);
  if (settings.length === 0) return refused('card-nothing-to-vary');
  if (settings.length > letters.length) {
    return refused('card-too-many-entries', { rungs: settings.length, most: letters.length });
  }

  const random = seededRandom(request.seed);
  const rungs = drawOrder(settings, random).map((setting, i): Rung => ({
    letter: letters.charAt(i),
    setting,
  }));
  const layout = layOut({
    cells: rungs.length * request.cellsEach,
    shapeBox: shapeBoxMm(request.shape, request.sizeMm),
    wordsWidthMm: widestWords(rungs, request.cellsEach),
    thicknessMm: request.thicknessMm,
    sheetMm: request.sheetMm,
    window: request.trusted !== undefined,
  });
  if (layout === undefined) {
    return refused('card-bigger-than-sheet', {
      cells: rungs.length * request.cellsEach,
      sizeMm: request.sizeMm,
      sheetWidthMm: request.sheetMm[0],
      sheetHeightMm: request.sheetMm[1],
    });
  }
  const cells = placeCells(request, rungs, layout, random);
  return done({
    card: cardOf(request, rungs, cells, layout, random.integer(4)),
    remarks: [...remarks, ...remarksOn(request)],
  });
};

/** The distinct settings of the card, and what had to be changed in those said outright. */
const rungSettings = (
  request: CardRequest,
): { readonly settings: readonly Setting[]; readonly remarks: readonly Problem[] } => {
  if (request.rungs === undefined) {
    const settings = settingsFor(request);
    const wanted = request.settingsAtMost ?? settings.length;
    const short =
      settings.length < Math.min(wanted, 3) || (wanted <= 8 && settings.length < wanted - 2);
    return {
      settings,
      remarks: short
        ? [problemOf('card-fewer-rungs-than-asked', { rungs: settings.length, asked: wanted })]
        : [],
    };
  }
  const remarks: Problem[] = [];
  const settings = new Map<string, Setting>();
  for (const said of request.rungs) {
    const held = heldToCeiling(said, request, remarks);
    settings.set(settingKey(held), held);
  }
  return { settings: [...settings.values()], remarks };
};

const heldToCeiling = (said: Setting, request: CardRequest, remarks: Problem[]): Setting => {
  const setting: Setting = {
    ...(request.air === undefined ? {} : { air: request.air }),
    ...said,
    powerPct: Number(said.powerPct.toFixed(1)),
    speedMmPerS: Math.max(0.1, Number(said.speedMmPerS.toFixed(1))),
  };
  if (setting.speedMmPerS !== said.speedMmPerS || setting.powerPct !== said.powerPct) {
    remarks.push(
      problemOf('card-rung-rounded', {
        saidMmPerS: said.speedMmPerS,
        saidPct: said.powerPct,
        speedMmPerS: setting.speedMmPerS,
        powerPct: setting.powerPct,
      }),
    );
  }
  if (energyRatio(setting, request.believed) <= energyCeiling) return setting;
  const slowest = slowestAllowed(setting.powerPct, setting.passes, request.believed);
  const speedMmPerS = stepNotSlower(slowest);
  remarks.push(
    problemOf('card-rung-slowed-to-ceiling', {
      saidMmPerS: setting.speedMmPerS,
      powerPct: setting.powerPct,
      speedMmPerS,
      times: Number(energyRatio(setting, request.believed).toFixed(1)),
    }),
  );
  return { ...setting, speedMmPerS };
};

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
    const r = order[i] ?? 0;
    const number = (counts.get(r) ?? 0) + 1;
    counts.set(r, number);
    const rung = letters.charAt(r);
    return { id: `${rung}${number}`, rung, xMm: rounded(xMm), yMm: rounded(yMm) };
  });
};

const rounded = (mm: number): number => Number(mm.toFixed(3));

const notchCorners = ['lower-left', 'lower-right', 'upper-left', 'upper-right'] as const;

const cardOf = (
  request: CardRequest,
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
  scoring: request.scoring ?? scoringGuess(request),
  ...(request.trusted === undefined ? {} : { trusted: request.trusted }),
  outline: request.trusted === undefined ? 'none' : (request.outline ?? 'last'),
  doubledNotch: notchCorners[doubled] ?? 'lower-left',
  places: layout.places,
  ...(request.order === 'free' ? { order: 'free' as const } : {}),
  ...(request.batch === undefined ? {} : { batch: request.batch }),
  ...(request.sheet === undefined ? {} : { sheet: request.sheet }),
  thicknessMm: request.thicknessMm,
});

const problemOf = (code: string, params: Problem['params'] = {}): Problem => ({ code, params });

const remarksOn = (request: CardRequest): readonly Problem[] => [
  ...(testShapes[request.shape].flatters ? [problemOf('card-circle-flatters')] : []),
  ...(request.scoring === undefined ? [problemOf('card-scoring-guessed')] : []),
  ...(request.trusted === undefined ? [problemOf('card-no-trusted-setting')] : []),
  ...(request.order === 'free' ? [problemOf('card-order-only-in-gcode')] : []),
];
