import type { Card } from '../card/card.ts';
import { cellsByRung, cellsInCuttingOrder } from '../card/cuttingOrder.ts';
import { areWordsOf, cellWords } from '../card/settingWords.ts';
import type { Setting } from '../machine/setting.ts';
import { beamModesOf } from './beamModes.ts';
import { coloursOf, type CardColours } from './cardColours.ts';
import type { MatchedCard, MatchedCell } from './matchCard.ts';
import {
  isSetting,
  asFileSetting,
  fileSetting,
  fileSettingWords,
  type FileSetting,
} from './fileSetting.ts';
import { fault, remark, type Finding, type PathLine, type Toolpath } from './toolpath.ts';

/** Holds a file against the card that it should be: every cell's setting, its words, the order, what is there beside. */
export const checkAgainstCard = (
  card: Card,
  toolpath: Toolpath,
  matched: MatchedCard | undefined,
): readonly Finding[] => {
  if (matched === undefined) return [fault('check-not-this-card', { card: card.code })];
  const colours = coloursOf(card);
  return [
    ...checkCells(card, toolpath, matched, colours),
    ...checkSpelt(card, toolpath, matched),
    ...checkBeams(matched),
    ...checkWords(card, matched),
    ...checkMarksAndRest(card, toolpath, matched, colours),
    ...checkOrder(card, toolpath, matched),
    ...checkColours(toolpath, matched, colours),
  ];
};

const settingOf = (card: Card, rung: string): Setting | undefined =>
  card.rungs.find(({ letter }) => letter === rung)?.setting;

/**
 * What a line is cut with: as the file says, else as the type-in list has it for the colour. Undefined where neither says.
 */
const toldOrTyped = (
  toolpath: Toolpath,
  line: PathLine,
  colours: CardColours,
): FileSetting | undefined => {
  const told = fileSetting(toolpath, line);
  if (told !== undefined) return told;
  const typed = colours.settingFor(line.colour);
  if (typed === undefined) return undefined;
  const setting = asFileSetting(typed);
  return { ...setting, passes: setting.passes * line.passes };
};

/** Less of an outline than this is missing where lines were joined or rounded. */
const wholeShare = 0.97;

const checkCells = (
  card: Card,
  toolpath: Toolpath,
  matched: MatchedCard,
  colours: CardColours,
): readonly Finding[] =>
  matched.cells.flatMap((there) => {
    const { cell, pieces, times } = there;
    const meant = settingOf(card, cell.rung);
    const [first] = pieces;
    if (first === undefined) return [fault('check-cell-missing', { cell: cell.id })];
    const told = toldOrTyped(toolpath, first.line, colours);
    if (told === undefined || meant === undefined)
      return [fault('check-layer-unnamed', { cell: cell.id, layer: first.line.layer ?? '' })];
    for (const { line } of pieces) {
      const other = toldOrTyped(toolpath, line, colours);
      if (other === undefined)
        return [fault('check-layer-unnamed', { cell: cell.id, layer: line.layer ?? '' })];
      const [one, another] = [fileSettingWords(told, first.line), fileSettingWords(other, line)];
      if (one !== another)
        return [fault('check-cell-mixed', { cell: cell.id, one, other: another })];
    }
    const partly = partlyCut(there);
    const whole = { ...told, passes: told.passes * Math.max(1, Math.round(times)) };
    const where = Math.min(...pieces.map(({ line }) => line.where));
    return [
      ...partly,
      ...(isSetting(whole, meant)
        ? []
        : [
            fault('check-cell-differs', {
              cell: cell.id,
              card: meantWords(meant),
              file: fileSettingWords(whole, first.line, meant),
              where,
            }),
          ]),
    ];
  });

/** Neither whole nor whole so many times. */
const partlyCut = ({ cell, share, times, unevenShare }: MatchedCell): readonly Finding[] => {
  if (share >= wholeShare && unevenShare <= 1 - wholeShare) return [];
  const pct = Math.round(100 * (share < wholeShare ? share : times));
  return [fault('check-cell-partly', { cell: cell.id, pct })];
};

/** With the pressure, which stands in no words beside a cell. */
const meantWords = (meant: Setting): string =>
  [
    cellWords(meant),
    ...(typeof meant.air === 'object' ? [`${String(meant.air.kPa)} kPa`] : []),
  ].join(' ');

/** What a program's comments say of its cells beside F and S, power in corners and pressure included, is the card's. */
const checkSpelt = (card: Card, { kind }: Toolpath, { cells }: MatchedCard): readonly Finding[] =>
  cells.flatMap(({ cell, pieces }) => {
    const meant = settingOf(card, cell.rung);
    if (kind !== 'gcode' || meant === undefined) return [];
    const off = pieces.find(
      ({ line }) =>
        (line.spelt !== undefined && !isSetting(asFileSetting(line.spelt.setting), meant)) ||
        (line.cell?.words !== undefined && !areWordsOf(line.cell.words, meant)),
    );
    if (off === undefined) return [];
    const label = off.line.cell?.words ?? off.line.layer ?? '';
    const params = { cell: cell.id, card: meantWords(meant), label, where: off.line.where };
    return [fault('check-spelt-differs', params)];
  });

/** One shape at M4 among those at M3 is cut with less power in its corners than its words let think. */
const checkBeams = ({ cells }: MatchedCard): readonly Finding[] =>
  beamModesOf(
    cells.flatMap(({ cell, pieces }) =>
      pieces.map(({ line, mm }) => ({ cell: cell.id, line, mm })),
    ),
  );

/** More than this in the place of words is another sign, or one too many, mm. */
const strangeWordsMm = 0.4;

const checkWords = (card: Card, { words }: MatchedCard): readonly Finding[] => {
  if (words.every(({ found, strangeMm }) => found === 0 && strangeMm <= strangeWordsMm)) {
    return [remark('check-words-missing', { card: card.code })];
  }
  return words
    .filter(({ found, expected, strangeMm }) => found < expected || strangeMm > strangeWordsMm)
    .map(({ cell }) => {
      const meant = settingOf(card, cell.rung);
      return fault('check-words-differ', {
        cell: cell.id,
        words: meant === undefined ? '' : cellWords(meant),
      });
    });
};

/** Marks, window and outline at the settings that the card has for them; what is missing, and what the card does not have. */
const checkMarksAndRest = (
  card: Card,
  toolpath: Toolpath,
  matched: MatchedCard,
  colours: CardColours,
): readonly Finding[] => {
  const against = (
    lines: readonly PathLine[],
    meant: Setting | undefined,
    part: string,
  ): readonly Finding[] => {
    if (meant === undefined) return [];
    for (const line of lines) {
      const told = toldOrTyped(toolpath, line, colours);
      if (told === undefined) return [remark('check-layer-unnamed', { layer: line.layer ?? part })];
      if (isSetting(told, meant)) continue;
      const file = fileSettingWords(told, line, meant);
      return [
        fault('check-marks-differ', { part, card: meantWords(meant), file, where: line.where }),
      ];
    }
    return [];
  };
  const [stranger] = matched.strangers;
  return [
    ...against(matched.marks, card.scoring, 'marks'),
    ...against([...matched.window, ...matched.outline], card.trusted, 'outline'),
    ...matched.missing.map((part) => remark('check-part-missing', { part })),
    ...(stranger === undefined
      ? []
      : [fault('check-line-unknown', { count: matched.strangers.length, where: stranger.where })]),
  ];
};

/**
 * Marks before every cell, window and outline after; the cells as the card has them, which are shuffled for a reason. A drawing
 * goes layer by layer, whatever a free card asks for.
 */
const checkOrder = (card: Card, { kind }: Toolpath, matched: MatchedCard): readonly Finding[] => {
  const placesOf = (lines: readonly PathLine[]): readonly number[] =>
    lines.map(({ where }) => where);
  const cells = matched.cells
    .filter(({ pieces }) => pieces.length > 0)
    .map(({ cell, pieces }) => ({
      id: cell.id,
      first: Math.min(...placesOf(pieces.map(({ line }) => line))),
    }))
    .sort((a, b) => a.first - b.first);
  const [first, last] = [cells[0], cells.at(-1)];
  if (first === undefined || last === undefined) return [];
  const wanted = (kind === 'gcode' ? cellsInCuttingOrder(card) : cellsByRung(card))
    .map(({ id }) => id)
    .filter((id) => cells.some((c) => c.id === id));
  const outOfOrder = cells.findIndex(({ id }, i) => id !== wanted[i]);
  const lateMark = matched.marks.find(({ where }) => where > first.first);
  const earlyOutline = matched.outline.find(({ where }) => where < last.first);
  const earlyWindow = matched.window.find(({ where }) => where < last.first);
  return [
    ...(lateMark === undefined ? [] : [fault('check-marks-late', { where: lateMark.where })]),
    ...(earlyOutline === undefined
      ? []
      : [fault('check-outline-early', { cell: last.id, where: earlyOutline.where })]),
    ...(earlyWindow === undefined
      ? []
      : [fault('check-window-early', { cell: last.id, where: earlyWindow.where })]),
    ...(outOfOrder < 0
      ? []
      : [
          fault('check-order-differs', {
            cell: cells[outOfOrder]?.id ?? '',
            wanted: wanted[outOfOrder] ?? '',
          }),
        ]),
  ];
};

/**
 * Control programs go by colour: a drawing whose colours are not the list's gets other settings than were typed. Where only
 * colours are left, that is said.
 */
const checkColours = (
  { kind }: Toolpath,
  { cells }: MatchedCard,
  colours: CardColours,
): readonly Finding[] => {
  if (kind === 'gcode') return [];
  const all = cells.flatMap(({ cell, pieces }) => pieces.map(({ line }) => ({ cell, line })));
  const off = all.find(
    ({ cell, line }) =>
      line.colour !== undefined &&
      !colours.isOf(cell.rung, line.colour) &&
      (line.spelt !== undefined || colours.settingFor(line.colour) !== undefined),
  );
  const nameless = all.some(
    ({ line }) => line.spelt === undefined && colours.settingFor(line.colour) !== undefined,
  );
  return [
    ...(nameless ? [remark('check-names-lost')] : []),
    ...(off === undefined
      ? []
      : [
          fault('check-colour-differs', {
            cell: off.cell.id,
            colour: off.line.colour ?? '',
            listed: colours.listed(off.cell.rung),
          }),
        ]),
  ];
};
