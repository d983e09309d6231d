/** A drawing in mm with such elements in it. */
export const svgOf = (body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${body}</svg>`;

/** So many of something, one behind the other. */
export const many = (count: number, one: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => one(i)).join('');

/** Words made of words: ten of the one before, nine times over. */
export const wordsOfWords = (): string => {
  const words = many(9, (i) => `<!ENTITY l${String(i + 1)} "${`&l${String(i)};`.repeat(10)}">`);
  return `<!DOCTYPE svg [<!ENTITY l0 "lol">${words}]>${svgOf('<text>&l9;</text>')}`;
};

/** A group that is twice the next one, forty times over. */
export const doubling = (last: string): string =>
  svgOf(
    `<defs><g id="g40">${last}</g>${many(40, (i) => `<g id="g${String(i)}"><use href="#g${String(i + 1)}"/><use href="#g${String(i + 1)}"/></g>`)}</defs><use href="#g0"/>`,
  );

/** Copies that go round in a ring. */
export const ringOfCopies = (): string =>
  svgOf(many(50, (i) => `<g id="g${String(i)}"><use href="#g${String((i + 1) % 50)}"/></g>`));

const dxfOf = (entities: string): string =>
  `0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`;

/** Lines, each in a layer of its own. */
export const layerEach = (count: number): string =>
  dxfOf(
    many(
      count,
      (i) => `0\nLINE\n8\nL${String(i)}\n10\n${String(i)}\n20\n0\n11\n${String(i)}\n21\n5\n`,
    ),
  );

/** A line drawn again and again in one place. */
export const sameLine = (count: number): string =>
  svgOf(`<g fill="none" stroke="black">${many(count, () => '<path d="M10 10 L90 10"/>')}</g>`);

/** Circles about one middle, 0.06 mm apart. */
export const nestOfCircles = (count: number): string =>
  svgOf(
    `<g fill="none" stroke="black">${many(
      count,
      (i) => `<circle cx="200" cy="200" r="${(0.06 * (i + 1)).toFixed(2)}"/>`,
    )}</g>`,
  );

/** A file that somebody made to tie up whoever reads it, or that a paste gone wrong left behind; each under 20 MB. */
export interface HostileFile {
  readonly what: string;
  readonly kind: 'svg' | 'dxf' | 'gcode';
  readonly text: () => string;
}

const svg = (what: string, text: () => string): HostileFile => ({ what, kind: 'svg', text });
const dxf = (what: string, text: () => string): HostileFile => ({ what, kind: 'dxf', text });
const gcode = (what: string, text: () => string): HostileFile => ({ what, kind: 'gcode', text });

/** Whose cost must be that of their length. */
export const longFiles: readonly HostileFile[] = [
  svg('numbers without end', () => svgOf(`<path d="M0 0L${'1'.repeat(5_000_000)} 1"/>`)),
  svg('spaces in a length', () => svgOf(`<rect width="1${' '.repeat(5_000_000)}!" height="1"/>`)),
  svg(
    'spaces in a viewBox',
    () => `<svg width="9mm" height="9mm" viewBox="0 0${' '.repeat(5_000_000)}!"/>`,
  ),
  svg('a transform of brackets', () => svgOf(`<g transform="${'scale('.repeat(1_000_000)}"/>`)),
  svg('a transform of parts', () =>
    svgOf(`<g transform="${'scale(1)'.repeat(1_000_000)}"><path d="M0 0h1"/></g>`),
  ),
  svg('a style of nothing', () => svgOf(`<path style="${';'.repeat(5_000_000)}" d="M0 0h1"/>`)),
  svg('classes', () =>
    svgOf(`<style>.a{fill:red}</style><path class="${'a '.repeat(2_000_000)}" d="M0 0h1"/>`),
  ),
  svg('a colour of colours', () =>
    svgOf(`<path stroke="${'url(#a) '.repeat(1_000_000)}" d="M0 0h1"/>`),
  ),
  svg('a name of marks', () =>
    svgOf(`<g id="${'1mmps_'.repeat(1_000_000)}"><path d="M0 0h1"/></g>`),
  ),
  svg('text of spaces', () => svgOf(`<text>${' '.repeat(5_000_000)}</text>`)),
  svg('a comment', () => `<!---${' x'.repeat(5_000_000)}-->${svgOf('')}`),
  dxf('lines without values', () => `0\nSECTION\n${'0\n'.repeat(5_000_000)}`),
  dxf(
    'layers',
    () => `0\nSECTION\n2\nTABLES\n${many(300_000, (i) => `0\nLAYER\n2\nL${String(i)}\n`)}0\nEOF\n`,
  ),
  gcode('one line of words', () => `G21\n${'X1'.repeat(5_000_000)}`),
  gcode('one comment', () => `G21\n(${'x'.repeat(10_000_000)}`),
  gcode('moves', () => `G21 G90\nF100\n${'X1\n'.repeat(2_100_000)}`),
  gcode(
    'names',
    () =>
      `G21 G90\nM3 S1\nF100\n${many(100_000, (i) => `(A${String(i % 900)} 9 mm/s 3%)\nG1 X${String(i % 9)}\n`)}`,
  ),
  gcode(
    'settings',
    () =>
      `G21 G90\nM3 S1\n${many(100_000, (i) => `(A 1${String(i % 90)}.0mmps 30pct min30)\nG1 X${String(i % 9)} F${String(100 + (i % 3))} S${String(i % 2)}\n`)}`,
  ),
  gcode('circles', () => `G21 G90\nF100 M3 S1\n${'G2 I90000\n'.repeat(300_000)}`),
];

/** All that a door for files must bear. */
export const hostileFiles: readonly HostileFile[] = [
  ...longFiles,
  svg('words made of words', wordsOfWords),
  svg('copies that double', () => doubling('<path d="M0 0h1"/>')),
  svg('copies in a ring', ringOfCopies),
  svg('a million groups in groups', () => `<svg>${'<g>'.repeat(1_000_000)}`),
  svg('600,000 elements', () => svgOf('<g/>'.repeat(600_000))),
  svg('2,500,000 points', () => svgOf(`<path d="M0 0${'h1h-1'.repeat(1_250_000)}"/>`)),
  svg('3,000 circles as large as a house', () => svgOf('<circle r="90000"/>'.repeat(3000))),
  svg('5,000 lines in one place', () => sameLine(5000)),
  svg('20,000 lines in one place', () => sameLine(20_000)),
  svg('100,000 lines in one place', () => sameLine(100_000)),
  svg('3,000 circles about one middle', () => nestOfCircles(3000)),
  svg('50,000 lines that all cross one another', () =>
    svgOf(
      `<g fill="none" stroke="black">${many(50_000, (i) => `<path d="M0 ${String(i / 500)}L100 ${String(100 - i / 500)}"/>`)}</g>`,
    ),
  ),
  svg('200,000 colours', () =>
    svgOf(
      many(
        200_000,
        (i) => `<path stroke="#${i.toString(16).padStart(6, '0')}" d="M${String(i % 100)} 0v9"/>`,
      ),
    ),
  ),
  dxf('20,000 lines with a layer each', () => layerEach(20_000)),
  dxf('200,000 lines with a layer each', () => layerEach(200_000)),
  gcode(
    'as many moves as are read, and no more',
    () => `G21 G90\nM3 S1 F100\n${many(799_000, (i) => `X${String(i % 97)}Y${String(i % 7)}\n`)}`,
  ),
  gcode(
    '400,000 short moves with the beam on',
    () =>
      `G21 G90\nM3 S100\n${many(400_000, (i) => `G1 X${String(i % 300)} Y${String(i % 7)} F900\n`)}M5\n`,
  ),
];
