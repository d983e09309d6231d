import { printable } from './fonts.ts';
import { runsOf, type Run } from './fontsInUse.ts';

/** Points in a mm. */
export const pt = 72 / 25.4;

export const ink = '#1c2126';
export const faint = '#68717a';
export const rule = '#c9ced3';

/** A4 with its margins, in points. */
export const page = { width: 595.28, height: 841.89, margin: 40 } as const;
export const innerWidth = page.width - 2 * page.margin;

interface TextStyle {
  readonly font?: 'plain' | 'strong';
  readonly size?: number;
  readonly colour?: string;
  readonly width?: number;
  readonly align?: 'left' | 'center' | 'right';
}

/** How far the base line of the page's typeface lies below the top of its line, as a share of the size. */
const ascent = 0.984;

/** Writes a text at a place and gives the y below it. */
export const write = (
  pdf: PDFKit.PDFDocument,
  text: string,
  x: number,
  y: number,
  style: TextStyle = {},
): number => {
  const { font = 'plain', size = 9.5, colour = ink, width = innerWidth, align = 'left' } = style;
  const runs = runsOf(pdf, printable(text));
  pdf.font(font).fontSize(size).fillColor(colour);
  if (runs.every((run) => run.font === undefined)) {
    pdf.text(runs.map((run) => run.text).join(''), x, y, { width, align, lineGap: 1 });
    return pdf.y;
  }
  const free = Math.max(0, width - widthOf(pdf, runs, style));
  const left = x + (align === 'left' ? 0 : align === 'right' ? free : free / 2);
  runs.forEach((run, i) => {
    const thicken =
      (run.font?.thicken ?? 0) + (run.font !== undefined && font === 'strong' ? 0.04 : 0);
    pdf
      .font(run.font?.id ?? font)
      .fontSize(size)
      .fillColor(colour);
    if (thicken > 0) pdf.lineWidth(thicken * size).strokeColor(colour);
    const options = {
      width: width - (left - x),
      lineGap: 1,
      baseline: 'alphabetic',
      continued: i < runs.length - 1,
      fill: true,
      stroke: thicken > 0,
    } as const;
    if (i === 0) pdf.text(run.text, left, y + ascent * size, options);
    else pdf.text(run.text, options);
  });
  return pdf.y - ascent * size;
};

/** Of all runs in one line. */
const widthOf = (
  pdf: PDFKit.PDFDocument,
  runs: readonly Run[],
  { font = 'plain', size = 9.5 }: TextStyle,
): number =>
  runs.reduce(
    (sum, run) =>
      sum +
      pdf
        .font(run.font?.id ?? font)
        .fontSize(size)
        .widthOfString(run.text),
    0,
  );

/** The height that a text will take. */
export const heightOf = (pdf: PDFKit.PDFDocument, text: string, style: TextStyle = {}): number => {
  const { font = 'plain', size = 9.5, width = innerWidth } = style;
  const runs = runsOf(pdf, printable(text));
  pdf.font(font).fontSize(size);
  const own = pdf.heightOfString(runs.map((run) => run.text).join(''), { width, lineGap: 1 });
  if (runs.every((run) => run.font === undefined)) return own;
  // Signs of other scripts are wider than those that stand for them here.
  const lines = Math.ceil((1.08 * widthOf(pdf, runs, style)) / width);
  return Math.max(own, lines * (1.4 * size + 1));
};

/** The title once more, small, at the head of a page that may lie loose. */
export const drawRunningHead = (pdf: PDFKit.PDFDocument, title: string, number: number): void => {
  write(pdf, `${title} · ${String(number)}`, page.margin, page.margin - 18, {
    size: 8,
    colour: faint,
  });
};

/**
 * Starts a new page where what comes does not fit any more; gives the y to go on from. `again` draws what stands above
 * every part of it, such as the heads of a table's columns, and gives the y below.
 */
export const roomFor = (
  pdf: PDFKit.PDFDocument,
  y: number,
  needed: number,
  again?: (top: number) => number,
): number => {
  if (y + needed <= page.height - page.margin) return y;
  pdf.addPage();
  return again === undefined ? page.margin : again(page.margin);
};

/** A heading with a rule under it; gives the y below. */
export const heading = (
  pdf: PDFKit.PDFDocument,
  text: string,
  x: number,
  y: number,
  width = innerWidth,
): number => {
  const below = write(pdf, text, x, y, { font: 'strong', size: 11, width });
  pdf
    .lineWidth(0.7)
    .strokeColor(rule)
    .moveTo(x, below + 1)
    .lineTo(x + width, below + 1)
    .stroke();
  return below + 6;
};
