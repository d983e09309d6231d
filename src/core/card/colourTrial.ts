import type { Polyline } from '../path/polyline.ts';
import type { CardDrawing, DrawnLayer } from './cardDrawing.ts';
import { textWidthMm, writeText } from './letters.ts';
import { wordLettering } from './lettering.ts';
import { marksColour, rungColours, trustedColour } from './rungColours.ts';
import { rungLetter } from './rungLetter.ts';

const stripLengthMm = 24;
const stripStepMm = 4;
const columnStepMm = 36;
const stripsInColumn = 12;
const marginMm = 5;

/**
 * The colour trial: strips in every colour that a card may use, marks and outline included, each with its letter. It is
 * only loaded, not cut: the control program shows how many entries it keeps apart, and a card never uses more. Up to 60
 * rungs.
 */
export const colourTrial = (rungs = 20): CardDrawing => {
  const colours = [marksColour, ...rungColours(rungs), trustedColour];
  const labels = ['marks', ...Array.from({ length: rungs }, (_, i) => rungLetter(i)), 'outline'];
  const columns = Math.ceil(colours.length / stripsInColumn);
  const rows = Math.min(colours.length, stripsInColumn);
  const heightMm = 2 * marginMm + rows * stripStepMm;
  const layers = colours.map((colour, i): DrawnLayer => {
    const label = labels[i] ?? '';
    const left = marginMm + Math.floor(i / stripsInColumn) * columnStepMm;
    const y = heightMm - marginMm - (i % stripsInColumn) * stripStepMm - stripStepMm / 2;
    const polylines = strip(label, left, y);
    return {
      kind: 'rung',
      rung: label,
      name: `${label} trial`,
      colour,
      parts: [{ of: { what: 'hint' }, polylines }],
      polylines,
    };
  });
  return { widthMm: 2 * marginMm + columns * columnStepMm, heightMm, layers };
};

/** Its letter, and a line that is long enough to be found in a list and on the screen. */
const strip = (label: string, left: number, y: number): readonly Polyline[] => {
  const words = writeText(label, [left, y - wordLettering.capMm / 2], wordLettering);
  const from = left + Math.max(6, textWidthMm(label, wordLettering) + 1);
  return [
    ...words,
    [
      [from, y],
      [left + stripLengthMm + 6, y],
    ],
  ];
};
