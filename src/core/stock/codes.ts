/** What can be the matter with a stock, or is worth asking about it. */
export const stockCodes = [
  'material-refused',
  'material-caution',
  'material-which-leather',
  'material-which-felt',
  'material-which-cloth',
  'material-which-plastic',
  'material-which-layers',
  'material-what-instead',
  'material-rubber-data-sheet',
  'material-unknown',
  'air-off-burns',
  'label-lies',
  'label-beyond-standard',
  'thickness-one-reading',
  'thickness-readings-disagree',
  'energy-too-little',
  'energy-too-much',
  'speed-looks-too-fast',
  'speed-looks-too-slow',
] as const;

export type StockCode = (typeof stockCodes)[number];

/** A question that a name itself leaves open. */
export type OpenQuestion = Extract<StockCode, `material-which-${string}`>;
