import { printable } from './fonts.ts';

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

/** Writes a text at a place and gives the y below it. */
export const write = (
  pdf: PDFKit.PDFDocument,
  text: string,
  x: number,
  y: number,
  { font = 'plain', size = 9.5, colour = ink, width = innerWidth, align = 'left' }: TextStyle = {},
): number => {
  pdf.font(font).fontSize(size).fillColor(colour);
  pdf.text(printable(text), x, y, { width, align, lineGap: 1 });
  return pdf.y;
};

/** The height that a text will take. */
export const heightOf = (
  pdf: PDFKit.PDFDocument,
  text: string,
  { font = 'plain', size = 9.5, width = innerWidth }: TextStyle = {},
): number => {
  pdf.font(font).fontSize(size);
  return pdf.heightOfString(printable(text), { width, lineGap: 1 });
};

/** Starts a new page where what comes does not fit any more; gives the y to go on from. */
export const roomFor = (pdf: PDFKit.PDFDocument, y: number, needed: number): number => {
  if (y + needed <= page.height - page.margin) return y;
  pdf.addPage();
  return page.margin;
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
