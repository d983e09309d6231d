import { createRequire } from 'node:module';
import { scriptFontFor, type ScriptFont } from './scripts.ts';

const require = createRequire(import.meta.url);

/** A stretch of a text in one typeface; `font` undefined: the page's own. */
export interface Run {
  readonly text: string;
  readonly font?: ScriptFont;
}

/** What one document has at hand, and what its texts asked for in vain. */
interface InUse {
  readonly ready: ReadonlySet<string>;
  readonly wanted: Map<string, ScriptFont>;
}

const inUse = new WeakMap<PDFKit.PDFDocument, InUse>();

/** Says which fonts a document has; gives those that its texts want beside, filled as it is drawn. */
export const useFonts = (
  pdf: PDFKit.PDFDocument,
  ready: readonly ScriptFont[],
): ReadonlyMap<string, ScriptFont> => {
  const wanted = new Map<string, ScriptFont>();
  inUse.set(pdf, { ready: new Set(ready.map(({ id }) => id)), wanted });
  return wanted;
};

/** A text cut up by who can print it; what nobody can is a question mark, never an empty box. */
export const runsOf = (pdf: PDFKit.PDFDocument, text: string): readonly Run[] => {
  const runs: { text: string; font?: ScriptFont }[] = [];
  for (const sign of text) {
    const found = fontOf(pdf, sign);
    const last = runs.at(-1);
    const shown = found === 'none' ? '?' : sign;
    const font = found === 'none' || found === 'own' ? undefined : found;
    // A space does not begin a new stretch.
    if (last !== undefined && (last.font?.id === font?.id || sign === ' ')) last.text += shown;
    else runs.push({ text: shown, ...(font === undefined ? {} : { font }) });
  }
  return runs;
};

const fontOf = (pdf: PDFKit.PDFDocument, sign: string): ScriptFont | 'own' | 'none' => {
  const codePoint = sign.codePointAt(0) ?? 0;
  if (isOwn(codePoint)) return 'own';
  const font = scriptFontFor(codePoint);
  if (font === undefined) return 'none';
  const using = inUse.get(pdf);
  if (using?.ready.has(font.id) === true) return font;
  using?.wanted.set(font.id, font);
  return 'none';
};

/** What the page's own typeface has: Latin letters, and the signs that our own sentences use. */
const isOwn = (codePoint: number): boolean =>
  codePoint < 0x100 || own().has(codePoint) || (codePoint >= 0x2000 && codePoint <= 0x206f);

let ownSigns: ReadonlySet<number> | undefined;

const own = (): ReadonlySet<number> => {
  ownSigns ??= readOwn();
  return ownSigns;
};

const readOwn = (): ReadonlySet<number> => {
  const listed: unknown = require('@fontsource/atkinson-hyperlegible-next/unicode.json');
  const latin: unknown =
    typeof listed === 'object' && listed !== null ? Reflect.get(listed, 'latin') : undefined;
  return new Set(
    String(latin)
      .split(',')
      .map((range) => Number.parseInt(range.replace(/^U\+/i, ''), 16)),
  );
};
