import type { Card } from '../card/card.ts';
import { cellsByRung, cellsInCuttingOrder } from '../card/cuttingOrder.ts';
import { cardDrawing } from '../card/cardDrawing.ts';
import { cellWords } from '../card/settingWords.ts';
import type { Setting } from '../machine/setting.ts';
import type { MatchedCard } from './matchCard.ts';
import { isSetting, toldSetting, toldWords } from './toldSetting.ts';
import { fault, remark, type Finding, type PathLine, type Toolpath } from './toolpath.ts';

/** Holds a file against the card that it should be: every cell's setting, its words, the order, what is there beside. */
export const checkAgainstCard = (
  card: Card,
  toolpath: Toolpath,
  matched: MatchedCard | undefined,
): readonly Finding[] => {
  if (matched === undefined) return [fault('check-not-this-card', { card: card.code })];
  return [
    ...checkCells(card, toolpath, matched),
    ...checkWords(card, matched),
    ...checkMarksAndRest(card, toolpath, matched),
    ...checkOrder(card, toolpath, matched),
    ...checkColours(card, toolpath, matched),
    ...checkCornerPower(card, toolpath),
  ];
};

const settingOf = (card: Card, rung: string): Setting | undefined =>
  card.rungs.find(({ letter }) => letter === rung)?.setting;

const checkCells = (card: Card, toolpath: Toolpath, matched: MatchedCard): readonly Finding[] =>
  matched.cells.flatMap(({ cell, lines }) => {
    const meant = settingOf(card, cell.rung);
    if (lines.length === 0) return [fault('check-cell-missing', { cell: cell.id })];
    const told = lines.map((line) => ({ line, told: toldSetting(toolpath, line) }));
    const [first] = told;
    if (first?.told === undefined || meant === undefined) {
      return [fault('check-layer-unnamed', { cell: cell.id, layer: first?.line.layer ?? '' })];
    }
    const { line } = first;
    const differing = told.find(
      (other) =>
        other.told !== undefined &&
        toldWords(other.told, other.line) !== toldWords(first.told ?? other.told, line),
    );
    if (differing?.told !== undefined) {
      return [
        fault('check-cell-mixed', {
          cell: cell.id,
          one: toldWords(first.told, line),
          other: toldWords(differing.told, differing.line),
        }),
      ];
    }
    const whole = { ...first.told, passes: first.told.passes * lines.length };
    if (isSetting(whole, meant)) return [];
    return [
      fault('check-cell-differs', {
        cell: cell.id,
        card: cellWords(meant),
        file: toldWords(whole, line, meant),
        where: line.where,
      }),
    ];
  });

const checkWords = (card: Card, { words }: MatchedCard): readonly Finding[] => {
  if (words.every(({ found, strange }) => found === 0 && strange === 0)) {
    return [remark('check-words-missing', { card: card.code })];
  }
  return words
    .filter(({ found, expected, strange }) => found < expected || strange > 0)
    .map(({ cell }) => {
      const meant = settingOf(card, cell.rung);
      return fault('check-words-differ', {
        cell: cell.id,
        words: meant === undefined ? '' : cellWords(meant),
      });
    });
};

/** Marks, window and outline at the settings that the card has for them; and lines that the card does not have. */
const checkMarksAndRest = (
  card: Card,
  toolpath: Toolpath,
  matched: MatchedCard,
): readonly Finding[] => {
  const against = (
    lines: readonly PathLine[],
    meant: Setting | undefined,
    part: string,
  ): readonly Finding[] => {
    if (meant === undefined) return [];
    const off = lines.find((line) => {
      const told = toldSetting(toolpath, line);
      return told !== undefined && !isSetting(told, meant);
    });
    const told = off === undefined ? undefined : toldSetting(toolpath, off);
    if (off === undefined || told === undefined) return [];
    const params = {
      part,
      card: cellWords(meant),
      file: toldWords(told, off, meant),
      where: off.where,
    };
    return [fault('check-marks-differ', params)];
  };
  const [stranger] = matched.strangers;
  return [
    ...against(matched.marks, card.scoring, 'marks'),
    ...against([...matched.window, ...matched.outline], card.trusted, 'outline'),
    ...(stranger === undefined
      ? []
      : [fault('check-line-unknown', { count: matched.strangers.length, where: stranger.where })]),
  ];
};

/**
 * Marks before every cell, the outline after; the cells as the card has them, which are shuffled for a reason. A drawing
 * goes layer by layer, whatever a free card asks for.
 */
const checkOrder = (card: Card, { kind }: Toolpath, matched: MatchedCard): readonly Finding[] => {
  const placesOf = (lines: readonly PathLine[]): readonly number[] =>
    lines.map(({ where }) => where);
  const cells = matched.cells
    .filter(({ lines }) => lines.length > 0)
    .map(({ cell, lines }) => ({ id: cell.id, first: Math.min(...placesOf(lines)) }))
    .sort((a, b) => a.first - b.first);
  const [first, last] = [cells[0], cells.at(-1)];
  if (first === undefined || last === undefined) return [];
  const wanted = (kind === 'gcode' ? cellsInCuttingOrder(card) : cellsByRung(card))
    .map(({ id }) => id)
    .filter((id) => cells.some((c) => c.id === id));
  const outOfOrder = cells.findIndex(({ id }, i) => id !== wanted[i]);
  const lateMark = matched.marks.find(({ where }) => where > first.first);
  const earlyOutline = matched.outline.find(({ where }) => where < last.first);
  return [
    ...(lateMark === undefined ? [] : [fault('check-marks-late', { where: lateMark.where })]),
    ...(earlyOutline === undefined
      ? []
      : [fault('check-outline-early', { cell: last.id, where: earlyOutline.where })]),
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

/** Control programs go by colour: a drawing whose colours are not the list's gets other settings than were typed. */
const checkColours = (card: Card, toolpath: Toolpath, matched: MatchedCard): readonly Finding[] => {
  if (toolpath.kind !== 'svg') return [];
  const listed = new Map(cardDrawing(card).layers.map(({ rung, colour }) => [rung ?? '', colour]));
  const off = matched.cells.find(({ cell, lines }) => {
    const colour = lines[0]?.colour;
    return colour !== undefined && colour.toLowerCase() !== listed.get(cell.rung);
  });
  return off === undefined
    ? []
    : [
        fault('check-colour-differs', {
          cell: off.cell.id,
          colour: off.lines[0]?.colour ?? '',
          listed: listed.get(off.cell.rung) ?? '',
        }),
      ];
};

/** G-code has no word for the power in corners. */
const checkCornerPower = (card: Card, { kind }: Toolpath): readonly Finding[] => {
  const rung = card.rungs.find(
    ({ setting }) => setting.minPowerPct !== undefined && setting.minPowerPct < setting.powerPct,
  );
  return kind === 'gcode' && rung !== undefined
    ? [remark('check-corner-power-not-carried', { rung: rung.letter })]
    : [];
};
