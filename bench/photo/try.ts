import sharp from 'sharp';
import { inventCards } from '../files/inventCards.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { project } from '../../src/num/homography.ts';
import { drawScene } from './scene.ts';
import { cameraOf, renderPhoto } from './renderPhoto.ts';
import { lookForCards } from '../../src/core/photo/findCard.ts';
import { placeByMarks } from '../../src/core/photo/placeCard.ts';
import { existsSync, readFileSync } from 'node:fs';
const cards = inventCards(40, 3).filter((c) => c.outline === 'last');
const [from = 0, to = 12] = process.argv.slice(2).map(Number);
for (let i = from; i < to; i += 1) {
  const random = seededRandom(1000 + i);
  const card = cards[random.integer(cards.length)]!;
  const scene = drawScene(card, i % 2 ? 'hard' : 'fair', random);
  const file = `/tmp/dev/x/pp/${i}.png`;
  if (!existsSync(file)) {
    const t = Date.now();
    const p = renderPhoto(scene, 'front');
    if (i < 3) console.log('render', Date.now() - t);
    const jpg = await sharp(p.rgb, { raw: { width: p.widthPx, height: p.heightPx, channels: 3 } })
      .jpeg({ quality: scene.quality })
      .toBuffer();
    await sharp(jpg).png({ compressionLevel: 1 }).toFile(file);
  }
  const { data, info } = await sharp(readFileSync(file))
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const c0 = process.cpuUsage();
  const looked = lookForCards({ widthPx: info.width, heightPx: info.height, rgb: data });
  const c1 = process.cpuUsage(c0);
  const placed = placeByMarks(looked.planes, card, looked.quads);
  const c2 = process.cpuUsage(c0);
  const camera = cameraOf(scene);
  const err =
    placed === null
      ? NaN
      : Math.max(
          ...[
            [0, 0],
            [card.widthMm, 0],
            [0, card.heightMm],
            [card.widthMm, card.heightMm],
          ].map(([x, y]) => {
            const [u, v] = project(placed.toPx, [x!, y!]);
            const s = camera(u, v);
            return Math.hypot(s.x - x!, s.y - y!);
          }),
        );
  console.log(
    i,
    scene.mood,
    scene.look.name.padEnd(18),
    'tilt',
    scene.tiltDeg.toFixed(0),
    'h',
    scene.thicknessMm,
    'thumb',
    scene.thumbMm.toFixed(0),
    'quads',
    looked.quads.length,
    'marked',
    placed?.marked.toFixed(2),
    'err',
    err.toFixed(2),
    'cpu',
    Math.round(c1.user / 1000),
    Math.round(c2.user / 1000),
  );
}
