import { extname } from 'node:path';
import { growDrawing } from '../app/drawing/growDrawing.ts';
import { problemOf } from '../core/problem.ts';
import { drawingText } from '../formats/drawingText.ts';
import { writeTextFile } from '../host/files.ts';
import { problemInWords } from '../words/words.ts';
import { printOutcome, printRefusal, type ExitCode } from './output.ts';
import { readDrawingText } from './readDrawing.ts';

interface GrowOptions {
  /** The width that the beam removes, mm. */
  readonly kerf: string;
  /** The drawing to write: `.svg` or `.dxf`. */
  readonly out: string;
}

/** Wider than any beam that cuts sheet, mm. */
const widestMm = 5;

/**
 * `grow FILE --kerf MM --out FILE`: the drawing with outlines moved outward and holes inward by half the kerf, on the same
 * layers, written as SVG or DXF.
 */
export const runGrow = async (file: string, { kerf, out }: GrowOptions): Promise<ExitCode> => {
  const kerfMm = Number(kerf);
  if (!(kerfMm > 0 && kerfMm <= widestMm))
    return misused(`--kerf is “${kerf}”, not a width above 0 and up to ${String(widestMm)} mm`);
  const kind = extname(out).toLowerCase();
  if (kind !== '.svg' && kind !== '.dxf')
    return misused(`--out is “${out}”, which ends neither with .svg nor .dxf`);
  const text = await readDrawingText(file);
  if (!text.ok) return printRefusal(text.problem);
  const grown = growDrawing({ text: text.value, kerfMm });
  if (!grown.ok) return printRefusal(grown.problem);
  const { drawing, parts, rest, lost, remarks } = grown.value;
  const title = `moved by half a kerf of ${String(kerfMm)} mm`;
  const content = drawingText(drawing, kind === '.svg' ? 'svg' : 'dxf', title);
  return printOutcome(await writeTextFile(out, content), (written) => ({
    version: 1,
    written,
    growMm: kerfMm / 2,
    parts,
    rest,
    lost,
    remarks: remarks.map((remark) => problemInWords(remark)),
  }));
};

const misused = (detail: string): ExitCode =>
  printRefusal(problemOf('command-misused', { detail }));
