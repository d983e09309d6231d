import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);

/** A typeface for scripts that the page's own lacks; the first that has a sign is taken. */
interface Typeface {
  readonly name: string;
  /** How much its strokes are thickened, as a share of the size: some are drawn from their thinnest weight. */
  readonly thicken: number;
}

/** All of them Noto Sans (SIL Open Font License 1.1), each in files for some of its signs. */
const typefaces: readonly Typeface[] = [
  { name: 'noto-sans', thicken: 0 },
  { name: 'noto-sans-arabic', thicken: 0 },
  { name: 'noto-sans-hebrew', thicken: 0.025 },
  { name: 'noto-sans-thai', thicken: 0 },
  { name: 'noto-sans-sc', thicken: 0.025 },
  { name: 'noto-sans-kr', thicken: 0.025 },
];

/** One file of a typeface: it is loaded when one of its signs is to be printed. */
export interface ScriptFont {
  /** By which the PDF knows it. */
  readonly id: string;
  readonly file: string;
  readonly thicken: number;
}

interface Part {
  readonly font: ScriptFont;
  readonly ranges: readonly (readonly [first: number, last: number])[];
}

/** The font that has a sign; undefined where none has it. */
export const scriptFontFor = (codePoint: number): ScriptFont | undefined =>
  parts().find(({ ranges }) =>
    ranges.some(([first, last]) => codePoint >= first && codePoint <= last),
  )?.font;

/** The bytes of a font as a PDF can hold it. A few ms to some tens; the unpacker is loaded on the first call. */
export const loadScriptFont = async ({ file }: ScriptFont): Promise<Uint8Array> => {
  const { default: woff2 } = await import('wawoff2');
  return Uint8Array.from(await woff2.decompress(readFileSync(require.resolve(file))));
};

let known: readonly Part[] | undefined;

const parts = (): readonly Part[] => {
  known ??= typefaces.flatMap(partsOf);
  return known;
};

const partsOf = ({ name, thicken }: Typeface): readonly Part[] => {
  const folder = `@fontsource-variable/${name}`;
  const listed: unknown = JSON.parse(
    readFileSync(require.resolve(`${folder}/unicode.json`), 'utf8'),
  );
  if (typeof listed !== 'object' || listed === null) return [];
  return Object.entries(listed).map(([subset, ranges]): Part => {
    const id = `${name}-${subset.replaceAll(/[[\]]/g, '')}`;
    return {
      font: { id, file: `${folder}/files/${id}-wght-normal.woff2`, thicken },
      ranges: String(ranges).split(',').map(rangeOf),
    };
  });
};

/** `U+0400-045F` or `U+2116`. */
const rangeOf = (text: string): readonly [number, number] => {
  const [first = '', last = first] = text.trim().replace(/^U\+/i, '').split('-');
  return [Number.parseInt(first, 16), Number.parseInt(last, 16)];
};
