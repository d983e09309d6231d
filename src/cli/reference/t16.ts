import { z } from 'zod';

import type { GcodeMove, GcodeProgram } from '../../formats/gcode/gcodeProgram.ts';
import { interpretGcode } from '../../formats/gcode/interpretGcode.ts';
import type { Answerer } from './referenceFile.ts';

const program = z.object({
  program: z.string(),
  blockDeleteOn: z.boolean().default(true),
  startUnits: z.enum(['G20', 'G21']).default('G21'),
});

/** G-code programs, as they are carried out. */
export const t16: Answerer = (input) => {
  if (typeof input['program'] !== 'string') return undefined;
  const { program: text, ...options } = program.parse(input);
  const run = interpretGcode(text, options);
  if (run.ok) return carriedOut(run.program);
  const { line, why, movesBefore } = run.error;
  return { error: { line, why }, movesBefore };
};

const carriedOut = (done: GcodeProgram): object => {
  const { final, moves } = done;
  const feeds = moves.filter(({ type }) => type !== 'rapid');
  return {
    error: null,
    moves: moves.map(moveOf),
    comments: done.comments,
    dwells: done.dwells.map(({ line, seconds }) => ({ line, seconds })),
    programEnd: done.programEnd,
    final: {
      position: final.position,
      modal: {
        motion: final.motion,
        plane: final.plane,
        distance: final.distance,
        feedMode: final.feedMode,
        units: final.units,
      },
      spindle: `M${String(final.spindle)}`,
      F_mm_per_min: final.feedMmPerMin,
      S: final.s,
    },
    totals: {
      rapidLength: sum(moves.filter(({ type }) => type === 'rapid').map((m) => m.lengthMm)),
      feedLength: sum(feeds.map((move) => move.lengthMm)),
      feedMinutes: sum(feeds.map((move) => move.minutes)),
    },
  };
};

const moveOf = (move: GcodeMove): object => ({
  line: move.line,
  type: move.type,
  start: move.start,
  end: move.end,
  F: move.feedMmPerMin,
  S: move.s,
  spindle: move.spindle,
  ...(move.arc === undefined
    ? {}
    : {
        centre: move.arc.centre,
        radius: move.arc.radiusMm,
        sweepDeg: (move.arc.sweepRad * 180) / Math.PI,
      }),
  length: move.lengthMm,
});

const sum = (values: readonly number[]): number =>
  values.reduce((total, value) => total + value, 0);
