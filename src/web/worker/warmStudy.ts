import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import { undescribedMachine } from '../../core/machine/machine.ts';
import { defaultPromise } from '../../core/reading/promise.ts';

const speedsMmPerS = [10, 12, 14, 16, 18, 20];

/** A small made-up study for the engine to warm up on. Its answer is thrown away. */
export const warmStudy: CutStudy = {
  machine: undescribedMachine,
  stock: { material: 'plywood', thicknessMm: 3 },
  cells: speedsMmPerS.map((speedMmPerS) => ({
    powerPct: 30,
    speedMmPerS,
    passes: 1,
    grade: speedMmPerS < 15 ? 'out' : 'stays',
  })),
  tallies: [],
  promise: defaultPromise,
  ask: { powerPct: 30 },
};
