import sharp from 'sharp';
import { inventCards } from '../files/inventCards.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { drawScene } from './scene.ts';
import { renderPhoto } from './renderPhoto.ts';
import { readPhoto } from '../../src/core/photo/readPhoto.ts';
import type { Picture } from '../../src/core/photo/picture.ts';
import { existsSync } from 'node:fs';
const cards = inventCards(40, 3).filter((c) => c.outline === 'last');
const [from = 0, to = 12] = process.argv.slice(2).map(Number);
for (let i = from; i < to; i += 1) {
  const random = seededRandom(1000 + i);
  const card = cards[random.integer(cards.length)]!;
  const scene = drawScene(card, i % 2 ? 'hard' : 'fair', random);
  const get = async (side: 'front' | 'back'): Promise<Picture> => {
    const file = `/tmp/dev/x/pp/${i}${side === 'back' ? 'b' : ''}.png`;
    const s =
      side === 'back'
        ? {
            ...scene,
            seed: scene.seed + 11,
            rollDeg: random.uniform() * 360,
            towardsDeg: random.uniform() * 360,
            thumbMm: 0,
          }
        : scene;
    if (!existsSync(file)) {
      const p = renderPhoto({ ...s, seed: scene.seed }, side);
      const jpg = await sharp(p.rgb, { raw: { width: p.widthPx, height: p.heightPx, channels: 3 } })
        .jpeg({ quality: scene.quality })
        .toBuffer();
      await sharp(jpg).png({ compressionLevel: 1 }).toFile(file);
    }
    const { data, info } = await sharp(file)
      .removeAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    return { widthPx: info.width, heightPx: info.height, rgb: data };
  };
  const front = await get('front');
  const back = await get('back');
  for (const photos of [{ front }, { front, back }]) {
    const c0 = process.cpuUsage();
    const read = readPhoto(card, photos);
    const ms = Math.round(process.cpuUsage(c0).user / 1000);
    if (read === null) {
      console.log(i, scene.mood, scene.look.name, 'NOT FOUND');
      continue;
    }
    const wrong = read.cells.filter((c) => c.grade !== scene.grades.get(c.cell));
    console.log(
      i,
      scene.mood,
      scene.look.name,
      'back' in photos ? (read.backRead ? 'BACK' : 'back?') : 'front',
      card.cells.length,
      'wrong',
      wrong
        .map((c) => `${c.cell}:${scene.grades.get(c.cell)}>${c.grade}@${c.sure.toFixed(2)}`)
        .join(' '),
      'cpu',
      ms,
    );
  }
}
