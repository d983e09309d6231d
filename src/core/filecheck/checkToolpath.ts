import type { Card } from '../card/card.ts';
import { cornerPowerPct, type Setting } from '../machine/setting.ts';
import { boxAround } from '../path/box.ts';
import { lengthMm } from '../path/polyline.ts';
import { checkAgainstCard } from './checkAgainstCard.ts';
import { checkEnclosure } from './checkEnclosure.ts';
import { checkLabels } from './checkLabels.ts';
import { checkBounds, checkPowerScale, checkSettings, type HeldTo } from './checkLimits.ts';
import { checkOwnWords } from './checkOwnWords.ts';
import { inferredScale } from './inferredScale.ts';
import { joinLines } from './joinLines.ts';
import { matchCard, type MatchedCard } from './matchCard.ts';
import { fault, remark, type Finding, type PathLine, type Toolpath } from './toolpath.ts';

export interface CheckReport {
  /** No faults; there may be remarks. */
  readonly ok: boolean;
  readonly findings: readonly Finding[];
  readonly lines: number;
  readonly lengthMm: number;
  /** Width and height of all that is cut. */
  readonly sizeMm?: readonly [widthMm: number, heightMm: number];
}

/**
 * Reads a file's toolpath for what would go wrong at the machine: label against setting, order, outline last, bounds,
 * ceiling, marks that would cut, traps of mode. With the card it knows what should be where, and names the cell. Never
 * says that a file is safe.
 */
export const checkToolpath = (file: Toolpath, against: HeldTo = {}): CheckReport => {
  const { card, machine } = against;
  const matched = card === undefined ? undefined : matchCard(card, file);
  const inferred =
    card === undefined || matched === undefined ? undefined : inferredScale(card, file, matched);
  const toolpath = inferred === undefined ? file : { ...file, sAtFullPower: inferred };
  const joined = { ...toolpath, lines: joinLines(toolpath.lines) };
  const isMark = marksOf(matched);
  const findings = [
    ...checkBeam(toolpath),
    ...toolpath.noticed,
    ...checkPowerScale(toolpath, inferred),
    ...checkLabels(toolpath),
    ...checkCornerPower(toolpath, card),
    ...(card === undefined ? checkOwnWords(joined) : checkAgainstCard(card, toolpath, matched)),
    ...checkEnclosure(joined, isMark),
    ...checkBounds(toolpath, machine),
    ...checkSettings(toolpath, against, isMark),
  ];
  const box = boxAround(toolpath.lines.map(({ points }) => points));
  return {
    ok: findings.every(({ severity }) => severity !== 'fault'),
    findings: [...findings].sort((a, b) => rank(a) - rank(b)),
    lines: toolpath.lines.length,
    lengthMm: toolpath.lines.reduce((sum, line) => sum + line.passes * lengthMm(line.points), 0),
    ...(box === undefined
      ? {}
      : { sizeMm: [box.rightMm - box.leftMm, box.topMm - box.bottomMm] as const }),
  };
};

/** A program says nothing of a power in corners: one that is called so, or is a card with it, cuts something else. */
const checkCornerPower = (
  { kind, lines }: Toolpath,
  card: Card | undefined,
): readonly Finding[] => {
  if (kind !== 'gcode') return [];
  const hasCorners = (setting: Setting): boolean => cornerPowerPct(setting) !== setting.powerPct;
  const rung = card?.rungs.find(({ setting }) => hasCorners(setting))?.letter;
  const named = lines.find(({ spelt }) => spelt !== undefined && hasCorners(spelt.setting));
  const about = rung ?? named?.spelt?.label;
  return about === undefined ? [] : [fault('check-corner-power-not-carried', { rung: about })];
};

/** A file must cut something, save a job that is there to be timed: that one must not. */
const checkBeam = ({ lines, disarmed }: Toolpath): readonly Finding[] => {
  const [first] = lines;
  if (disarmed === undefined) return first === undefined ? [fault('check-nothing-cut')] : [];
  return first === undefined
    ? [remark('check-beam-never-on')]
    : [fault('check-beam-not-disarmed', { where: first.where })];
};

const rank = ({ severity }: Finding): number => (severity === 'fault' ? 0 : 1);

/** Marks are what the card has as marks; without a card, what the file calls so. */
const marksOf = (matched: MatchedCard | undefined): ((line: PathLine) => boolean) => {
  if (matched === undefined) return (line) => /^marks(?:-|$)/.test(line.spelt?.label ?? '');
  // By place, so that a line which was joined counts as the first of its strokes.
  const marks = new Set(matched.marks.map(({ where }) => where));
  return ({ where }) => marks.has(where);
};
