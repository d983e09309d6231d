import sharp from 'sharp';
import { inventCards } from '../files/inventCards.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { drawScene } from './scene.ts';
import { lookForCards } from '../../src/core/photo/findCard.ts';
import { placeByMarks } from '../../src/core/photo/placeCard.ts';
import { cardLooks } from '../../src/core/photo/cellLooks.ts';
import { existsSync, readFileSync } from 'node:fs';
const cards = inventCards(40, 3).filter((c) => c.outline === 'last');
for (let i = 0; i < 60; i += 1) {
  const random = seededRandom(1000 + i);
  const card = cards[random.integer(cards.length)]!;
  const scene = drawScene(card, i % 2 ? 'hard' : 'fair', random);
  const file = `/tmp/dev/x/pp/${i}.png`;
  if (!existsSync(file)) continue;
  const { data, info } = await sharp(readFileSync(file))
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const looked = lookForCards({ widthPx: info.width, heightPx: info.height, rgb: data });
  const placed = placeByMarks(looked.planes, card, looked.quads);
  if (placed === null) continue;
  const c0 = process.cpuUsage();
  const looks = cardLooks({ planes: looked.planes, toPx: placed.toPx }, card);
  console.log(
    '#',
    i,
    scene.mood,
    scene.look.name,
    'marked',
    placed.marked.toFixed(2),
    'contrast',
    looks.contrast.toFixed(2),
    'px/mm',
    Math.hypot(placed.toPx[0][0], placed.toPx[1][0]).toFixed(1),
    'cpu',
    (process.cpuUsage(c0).user / 1000) | 0,
  );
  for (const c of looks.cells)
    console.log(
      i,
      scene.mood,
      scene.look.name.replace(' ', '_'),
      card.shape,
      scene.grades.get(c.cell),
      c.cell,
      [c.sheet, c.under, c.neither, c.shade, c.odd, c.lined, c.gapMm, c.gapSpreadMm]
        .map((x) => x.toFixed(2))
        .join(' '),
    );
}
