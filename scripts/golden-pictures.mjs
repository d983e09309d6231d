// Draws the golden SVG files as PNG, larger and in bolder lines, for a person to look at: `node scripts/golden-pictures.mjs FOLDER`.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';

const [folder = 'build/golden'] = process.argv.slice(2);
const goldens = join(import.meta.dirname, '../test/golden');
mkdirSync(folder, { recursive: true });
for (const file of readdirSync(goldens).filter((name) => name.endsWith('.svg'))) {
  const svg = readFileSync(join(goldens, file), 'utf8').replaceAll(
    'stroke-width="0.1"',
    'stroke-width="0.25"',
  );
  const picture = new Resvg(svg, {
    background: 'white',
    fitTo: { mode: 'width', value: 1200 },
  }).render();
  writeFileSync(join(folder, file.replace(/svg$/, 'png')), picture.asPng());
  console.log(join(folder, file.replace(/svg$/, 'png')));
}
