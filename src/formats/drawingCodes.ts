/** What can be the matter with a card file or a drawing on its way out or in. */
export const drawingCodes = [
  'card-file-cell-differs',
  'card-file-part-differs',
  'gcode-layer-without-setting',
] as const;

export type DrawingCode = (typeof drawingCodes)[number];
