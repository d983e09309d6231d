import { figure, text, type ProblemList } from './param.ts';

/** What can be the matter with a card file or a drawing on its way out or in. */
export const drawingProblems = {
  'card-file-cell-differs': { cell: text, card: text },
  'card-file-part-differs': { part: text, card: text },
  'gcode-layer-without-setting': { layer: text },
  'gcode-corner-power-not-carried': { rung: text, powerPct: figure, minPowerPct: figure },
  'gcode-pressure-not-carried': { one: text, oneKpa: figure, other: text, otherKpa: figure },
  'gcode-line-switches-output': { text },
  'gcode-line-hides-words': { text },
  'gcode-line-sets-controller': { text },
  'gcode-unreadable': { line: figure, why: text },
  'drawing-kind-unknown': {},
  'drawing-too-big': { megabytes: figure, most: figure },
  'drawing-too-many-points': { points: figure },
  'drawing-unreadable': { kind: text, detail: text },
  'drawing-declares-entities': {},
  'drawing-number-absurd': { where: figure },
  'drawing-too-many-parts': { most: figure },
  'drawing-copies-itself': { name: text },
} as const satisfies ProblemList;

export type DrawingCode = keyof typeof drawingProblems;
