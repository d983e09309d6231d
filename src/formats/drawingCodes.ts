/** What can be the matter with a card file or a drawing on its way out or in. */
export const drawingCodes = [
  'card-file-cell-differs',
  'card-file-part-differs',
  'gcode-layer-without-setting',
  'gcode-corner-power-not-carried',
  'gcode-pressure-not-carried',
  'gcode-unreadable',
  'drawing-kind-unknown',
  'drawing-too-big',
  'drawing-too-many-points',
  'drawing-unreadable',
  'drawing-declares-entities',
  'drawing-number-absurd',
  'drawing-too-many-parts',
  'drawing-copies-itself',
] as const;

export type DrawingCode = (typeof drawingCodes)[number];
