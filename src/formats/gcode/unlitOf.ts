import type { PathLine, Unlit } from '../../core/filecheck/toolpath.ts';
import type { GcodeMove, GcodeProgram } from './gcodeProgram.ts';
import { beamOf, isLit, seenFromAbove, speedOf } from './moves.ts';

/** Travels and pauses, each before the line that begins after it. O(moves + lines). */
export const unlitOf = (program: GcodeProgram, lines: readonly PathLine[]): readonly Unlit[] => {
  const steps = [
    ...program.moves
      .filter((move) => !isLit(move))
      .map((move) => ({ line: move.line, ...travelOf(move) })),
    ...program.dwells.map(({ line, seconds }) => ({ line, kind: 'wait' as const, seconds })),
  ].sort((a, b) => a.line - b.line);
  let beforeLine = 0;
  return steps.map(({ line, ...step }) => {
    while ((lines[beforeLine]?.where ?? Infinity) < line) beforeLine += 1;
    return { beforeLine, ...step };
  });
};

const travelOf = (move: GcodeMove) => ({
  kind: 'travel' as const,
  to: seenFromAbove(move.end),
  ...(move.type === 'rapid' ? {} : { speedMmPerS: speedOf(move), beam: beamOf(move) }),
});
