import type { Card } from '../card/card.ts';
import type { Setting } from '../machine/setting.ts';
import type { MatchedCard } from './matchCard.ts';
import type { PathLine, Toolpath } from './toolpath.ts';

/**
 * What S means 100 % in a program that does not say it, by the card that it is: the scale at which most of its length is
 * cut as the card says. What differs from the rest then shows. Undefined where the program says it itself.
 */
export const inferredScale = (
  card: Card,
  { kind, sAtFullPower }: Toolpath,
  matched: MatchedCard,
): number | undefined => {
  if (kind !== 'gcode' || sAtFullPower !== undefined) return undefined;
  const by = (line: PathLine, mm: number, meant: Setting | undefined): readonly Vote[] =>
    line.modal === undefined || meant === undefined || !(meant.powerPct > 0)
      ? []
      : [{ scale: (100 * line.modal.s) / meant.powerPct, mm }];
  const votes = matched.cells.flatMap(({ cell, pieces }) => {
    const meant = card.rungs.find(({ letter }) => letter === cell.rung)?.setting;
    return pieces.flatMap(({ line, mm }) => by(line, mm, meant));
  });
  return weightedMedian(votes);
};

interface Vote {
  readonly scale: number;
  readonly mm: number;
}

const weightedMedian = (votes: readonly Vote[]): number | undefined => {
  const sorted = votes.toSorted((a, b) => a.scale - b.scale);
  const half = sorted.reduce((sum, { mm }) => sum + mm, 0) / 2;
  let sum = 0;
  return sorted.find(({ mm }) => (sum += mm) >= half)?.scale;
};
