import { metricUnits, type UnitPreference } from '../core/units/unitPreference.ts';
import { inUnits } from '../words/texts.ts';
import { registerFonts, type LoadedFont } from './fonts.ts';
import { useFonts } from './fontsInUse.ts';
import { loadScriptFont, type ScriptFont } from './scripts.ts';
import { drawRunningHead, page } from './sheetOfPaper.ts';

interface PdfOptions {
  readonly title: string;
  /** ISO 8601, UTC. Equal pages of equal time are equal bytes. */
  readonly madeAt: string;
  /** Absent: mm, mm/s, kPa, °C. */
  readonly units?: UnitPreference;
}

/**
 * A PDF (A4) with the typefaces inside, drawn by `draw`. The library is loaded on the first call (~200 ms). Where a text
 * has signs that the page's own typeface lacks, the fonts that have them are loaded and everything is drawn anew: so
 * `draw` may be called twice. Every page after the first repeats the title.
 */
export const newPdf = async (
  options: PdfOptions,
  draw: (pdf: PDFKit.PDFDocument) => void,
): Promise<Uint8Array> => {
  const plain = await drawn(options, draw, []);
  if (plain.wanted.length === 0) return plain.bytes;
  const fonts: LoadedFont[] = [];
  // One after the other: the unpacker has one memory.
  for (const font of plain.wanted) fonts.push({ font, bytes: await loadScriptFont(font) });
  return (await drawn(options, draw, fonts)).bytes;
};

const drawn = async (
  { title, madeAt, units = metricUnits }: PdfOptions,
  draw: (pdf: PDFKit.PDFDocument) => void,
  fonts: readonly LoadedFont[],
): Promise<{ readonly bytes: Uint8Array; readonly wanted: readonly ScriptFont[] }> => {
  const { default: PDFDocument } = await import('pdfkit');
  const pdf = new PDFDocument({
    size: 'A4',
    margin: page.margin,
    lang: 'en',
    displayTitle: true,
    info: {
      Title: title,
      Creator: 'Throughcut',
      Producer: 'Throughcut',
      CreationDate: new Date(madeAt),
    },
  });
  const bytes = collect(pdf);
  registerFonts(pdf, fonts);
  const wanted = useFonts(
    pdf,
    fonts.map(({ font }) => font),
  );
  let pages = 1;
  pdf.on('pageAdded', () => {
    pages += 1;
    drawRunningHead(pdf, title, pages);
  });
  inUnits(units, () => draw(pdf));
  pdf.end();
  return { bytes: await bytes, wanted: [...wanted.values()] };
};

const collect = (pdf: PDFKit.PDFDocument): Promise<Uint8Array> =>
  new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    pdf.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    pdf.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    pdf.on('error', reject);
  });
