import type { WallLine, WallMachine } from '../core/standing/wallList.ts';
import type { UnitPreference } from '../core/units/unitPreference.ts';
import { inventedText, wallListText as words } from '../words/texts.ts';
import { newPdf } from './newPdf.ts';
import {
  faint,
  heading,
  heightOf,
  innerWidth,
  page,
  roomFor,
  rule,
  write,
} from './sheetOfPaper.ts';
import { drawHead } from './sheetParts.ts';

/** Where each column begins, and how wide it is. */
const widths = [96, 70, 38, 62, 80, 50, 64, 55] as const;
const size = 8.5;

/** Kept settings for the wall, by machine, as PDF (A4). `madeAt`: ISO 8601, UTC. */
export const wallListPdf = (
  machines: readonly WallMachine[],
  made: { readonly madeAt: string; readonly units?: UnitPreference },
): Promise<Uint8Array> =>
  newPdf({ title: words.title, ...made }, (pdf) => {
    let y = drawHead(pdf, words.title, [
      { text: words.care, font: 'strong' },
      { text: words.printedOn(made.madeAt) },
    ]);
    if (machines.length === 0) write(pdf, words.empty, page.margin, y + 8);
    for (const machine of machines) {
      const again = (above: number): number =>
        drawColumns(pdf, heading(pdf, machine.name ?? words.unnamed, page.margin, above));
      y = again(roomFor(pdf, y + 8, 70));
      for (const line of machine.lines) y = drawLine(pdf, line, y, again);
    }
  });

const drawColumns = (pdf: PDFKit.PDFDocument, y: number): number => {
  columnsFrom((x, i) => {
    write(pdf, words.columns[i] ?? '', x, y, { size: 8, colour: faint, width: widths[i] ?? 0 });
  });
  return y + 14;
};

const columnsFrom = (draw: (x: number, i: number) => void): void => {
  let x: number = page.margin;
  for (const [i, width] of widths.entries()) {
    draw(x, i);
    x += width;
  }
};

const drawLine = (
  pdf: PDFKit.PDFDocument,
  line: WallLine,
  top: number,
  again: (top: number) => number,
): number => {
  const { entry } = line;
  const cells = [
    inventedText.stock(words.sheet(entry.holdsFor), entry.isExample),
    words.cut(line),
    words.air(line),
    words.score(line),
    words.engrave(line),
    words.kerf(line.kerf),
    words.promise(line),
    words.kept(entry).join('\n'),
  ];
  const style = (i: number) => ({
    size,
    width: (widths[i] ?? 0) - 6,
    font: i === 1 ? ('strong' as const) : ('plain' as const),
  });
  const height = Math.max(...cells.map((text, i) => heightOf(pdf, text, style(i)))) + 5;
  const y = roomFor(pdf, top, height, again);
  columnsFrom((x, i) => {
    write(pdf, cells[i] ?? '', x, y, style(i));
  });
  pdf
    .moveTo(page.margin, y + height - 2)
    .lineTo(page.margin + innerWidth, y + height - 2)
    .lineWidth(0.4)
    .strokeColor(rule)
    .stroke();
  return y + height + 1;
};
