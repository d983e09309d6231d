import type { TypeInEntry, TypeInList, TypedFigure } from '../core/card/typeInList.ts';
import { jobSheetText } from '../words/texts.ts';
import { faint, heading, innerWidth, page, roomFor, rule, write } from './sheetOfPaper.ts';

const rowHeight = 17;
const columns: Readonly<Record<TypedFigure, number>> = {
  speedMmPerS: 128,
  powerPct: 198,
  minPowerPct: 258,
  passes: 348,
  air: 396,
};

/** The list of what is typed, a row an entry with a box to tick; gives the y below it. */
export const drawTypeInTable = (pdf: PDFKit.PDFDocument, list: TypeInList, top: number): number => {
  const rungs = list.groups.flatMap(({ entries }) => entries);
  const first = rungs[0]?.setting;
  let y = write(
    pdf,
    jobSheetText.toType(list.toType, rungs.length - list.toType),
    page.margin,
    top,
    { font: 'strong' },
  );
  if (first !== undefined && rungs.length > 1 && list.same.length > 0) {
    y = write(pdf, jobSheetText.everywhere(jobSheetText.same(list.same, first)), page.margin, y);
  }
  const again = (above: number): number =>
    drawHead(pdf, heading(pdf, jobSheetText.typeInTitle, page.margin, above));
  y = drawHead(pdf, y + 4);
  for (const entry of list.before) y = drawRow(pdf, entry, y, again);
  for (const { same, entries } of list.groups) {
    const setting = entries[0]?.setting;
    if (same.length > 0 && setting !== undefined) {
      y = roomFor(pdf, y, 2 * rowHeight, again);
      write(pdf, jobSheetText.inGroup(jobSheetText.same(same, setting)), page.margin, y + 3, {
        size: 8.5,
        colour: faint,
      });
      y += rowHeight - 2;
    }
    for (const entry of entries) y = drawRow(pdf, entry, y, again);
  }
  for (const entry of list.after) y = drawRow(pdf, entry, y, again);
  return y;
};

const figures: readonly TypedFigure[] = ['speedMmPerS', 'powerPct', 'minPowerPct', 'passes', 'air'];

const drawHead = (pdf: PDFKit.PDFDocument, y: number): number => {
  for (const figure of figures) {
    write(pdf, jobSheetText.figureName(figure), page.margin + columns[figure], y, {
      size: 8,
      colour: faint,
      width: 90,
    });
  }
  return y + 13;
};

const drawRow = (
  pdf: PDFKit.PDFDocument,
  entry: TypeInEntry,
  top: number,
  again: (top: number) => number,
): number => {
  const y = roomFor(pdf, top, rowHeight, again);
  pdf
    .rect(page.margin, y + 3, 10, 10)
    .lineWidth(0.8)
    .strokeColor(faint)
    .stroke();
  pdf
    .rect(page.margin + 18, y + 3, 16, 10)
    .fillColor(entry.colour)
    .fill();
  const strong = entry.kind === 'rung';
  write(pdf, jobSheetText.label(entry.label), page.margin + 40, y + (strong ? 0 : 2), {
    font: strong ? 'strong' : 'plain',
    size: strong ? 12 : 9,
    width: 88,
  });
  const { setting } = entry;
  if (setting === undefined) {
    write(pdf, jobSheetText.settingUnsaid, page.margin + columns.speedMmPerS, y + 2, {
      width: 300,
    });
  } else {
    for (const figure of figures) {
      write(pdf, jobSheetText.figure(figure, setting), page.margin + columns[figure], y + 1.5, {
        size: 10.5,
        font: figure === 'speedMmPerS' ? 'strong' : 'plain',
        width: 95,
      });
    }
  }
  if (entry.unchanged) {
    write(pdf, jobSheetText.unchanged, page.margin + 440, y + 2, {
      size: 8,
      colour: faint,
      width: 80,
    });
  }
  pdf
    .moveTo(page.margin, y + rowHeight - 0.5)
    .lineTo(page.margin + innerWidth, y + rowHeight - 0.5)
    .lineWidth(0.4)
    .strokeColor(rule)
    .stroke();
  return y + rowHeight;
};
