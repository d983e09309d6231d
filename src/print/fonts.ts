import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { ScriptFont } from './scripts.ts';

const require = createRequire(import.meta.url);
const plain =
  '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff';
const strong =
  '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff';

/** A font for other scripts, and its bytes. */
export interface LoadedFont {
  readonly font: ScriptFont;
  readonly bytes: Uint8Array;
}

/**
 * The page's own typeface (SIL Open Font License 1.1), put into every PDF so that it reads alike everywhere, and those for
 * other scripts that its texts want.
 */
export const registerFonts = (pdf: PDFKit.PDFDocument, others: readonly LoadedFont[]): void => {
  pdf.registerFont('plain', readFileSync(require.resolve(plain)));
  pdf.registerFont('strong', readFileSync(require.resolve(strong)));
  for (const { font, bytes } of others) pdf.registerFont(font.id, Buffer.from(bytes));
};

/** Signs that the typeface lacks, by ones that it has. */
const substitutes: Readonly<Record<string, string>> = {
  '\u202f': '\u00a0',
  µm: 'micrometres',
  '→': '–',
};

/** A text that the embedded typeface can show whole. */
export const printable = (text: string): string =>
  Object.entries(substitutes).reduce((shown, [sign, by]) => shown.replaceAll(sign, by), text);
