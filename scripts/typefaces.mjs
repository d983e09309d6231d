// Cuts the two typefaces of the page down to what its own words are written with, into src/web/look/typefaces: they come
// with the first view. Any other sign of a person's own is taken from the whole typeface, which a browser then fetches.
// With --check nothing is written; it ends with 1 where a file is not what would be.
import { Buffer } from 'node:buffer';
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import subsetFont from 'subset-font';

const require = createRequire(import.meta.url);
const folder = fileURLToPath(new URL('../src/web/look/typefaces', import.meta.url));

const ascii = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i)).join('');
const beyond = '\u00a0\u202f°±²½µ·×–—‘’“”″…⁄−';

/** What a program writes and no heading does: one that a person names so takes the whole typeface. */
const notInHeadings = /[{}|~^`@#$*<>=_[\]\\″⁄µ²]/;
const written = [...(ascii + beyond)];

/** Weights as the whole typeface has them, and of which range the part is. */
const typefaces = [
  {
    family: 'Atkinson Hyperlegible Next Variable',
    weights: '200 800',
    file: '@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2',
    part: 'text.woff2',
    signs: written,
    variationAxes: { wght: { min: 400, max: 700 } },
    // Figures of one width stand in tables.
    keepFeatures: ['kern', 'tnum'],
  },
  {
    family: 'Besley Variable',
    weights: '400 900',
    file: '@fontsource-variable/besley/files/besley-latin-wght-normal.woff2',
    part: 'display.woff2',
    signs: written.filter((sign) => !notInHeadings.test(sign)),
    // Headings and answers are of one weight.
    variationAxes: { wght: 600 },
    keepFeatures: ['kern', 'lnum'],
  },
];

const point = (code) => code.toString(16).toUpperCase().padStart(4, '0');

/** Signs that follow one another are said as one range. */
const unicodeRange = (signs) => {
  const ranges = [];
  for (const code of signs.map((sign) => sign.codePointAt(0)).sort((a, b) => a - b)) {
    const last = ranges.at(-1);
    if (last?.to === code - 1) last.to = code;
    else ranges.push({ from: code, to: code });
  }
  return ranges
    .map(({ from, to }) => `U+${point(from)}${from === to ? '' : `-${point(to)}`}`)
    .join(', ');
};

const rule = ({ family, weights, part, signs }) => `@font-face {
  font-family: '${family}';
  font-style: normal;
  font-display: swap;
  font-weight: ${weights};
  src: url(./${part}) format('woff2-variations');
  unicode-range: ${unicodeRange(signs)};
}
`;

const files = new Map();
for (const { file, part, signs, variationAxes, keepFeatures } of typefaces) {
  const whole = readFileSync(require.resolve(file));
  const options = { targetFormat: 'woff2', variationAxes, keepFeatures };
  files.set(part, await subsetFont(whole, signs.join(''), options));
}
const about =
  '/* Made by scripts/typefaces.mjs. Of two faces with one range of weights the later one is used where both have a sign. */';
files.set('typefaces.css', Buffer.from([about, ...typefaces.map(rule)].join('\n')));

for (const [name, bytes] of files) {
  const path = `${folder}/${name}`;
  if (!process.argv.includes('--check')) writeFileSync(path, bytes);
  else if (!readFileSync(path).equals(bytes)) {
    console.error(`${name} is not what npm run typefaces makes`);
    process.exitCode = 1;
  }
}
