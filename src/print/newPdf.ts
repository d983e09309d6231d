import { registerFonts } from './fonts.ts';
import { page } from './sheetOfPaper.ts';

interface PdfOptions {
  readonly title: string;
  /** ISO 8601, UTC. Equal pages of equal time are equal bytes. */
  readonly madeAt: string;
}

/** A PDF (A4) with the typefaces inside, drawn by `draw`. The library is loaded on the first call (~200 ms). */
export const newPdf = async (
  { title, madeAt }: PdfOptions,
  draw: (pdf: PDFKit.PDFDocument) => void,
): Promise<Uint8Array> => {
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
  registerFonts(pdf);
  draw(pdf);
  pdf.end();
  return bytes;
};

const collect = (pdf: PDFKit.PDFDocument): Promise<Uint8Array> =>
  new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    pdf.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    pdf.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    pdf.on('error', reject);
  });
