import { photoScore, type JudgedCard, type PhotoScore } from '../../src/core/photo/photoScore.ts';
import { readPhoto } from '../../src/core/photo/readPhoto.ts';
import { inventCards } from '../files/inventCards.ts';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { peerGrades } from './peerGrades.ts';
import type { Mood } from './scene.ts';
import { takePhotos } from './takePhotos.ts';

/** Cards photographed by a renderer, read and compared with what was put into the picture. */
export const photoPart: NightPart = {
  name: 'photo',
  about: 'rendered photographs of cards, fair and hard, front alone and with the back',
  run: () => readMany({ each: 100, seed: 1 }),
};

interface Extent {
  /** How many cards in either mood; each gives a front and a back. */
  readonly each: number;
  readonly seed: number;
}

/** Asked of a shape: right so often, by how hard the picture is. */
const asked: Readonly<Record<Mood, number>> = { fair: 0.99, hard: 0.97 };

export async function* readMany({ each, seed }: Extent): AsyncIterable<Figure> {
  const cards = inventCards(60, seed).filter(({ outline }) => outline === 'last');
  for (const mood of ['fair', 'hard'] as const) {
    const [both, front, plain]: [JudgedCard[], JudgedCard[], JudgedCard[]] = [[], [], []];
    let ms = 0;
    for (let i = 0; i < each; i += 1) {
      const card = cards[i % cards.length];
      if (card === undefined) continue;
      const drawn = seed * 10_000 + 2 * i + (mood === 'hard' ? 1 : 0);
      const taken = await takePhotos(card, mood, drawn);
      const judged = {
        name: `${mood} ${String(i)} ${taken.scene.look.name}`,
        truth: taken.scene.grades,
      };
      const before = process.cpuUsage();
      both.push({ ...judged, ...readPhoto(card, taken) });
      ms += process.cpuUsage(before).user / 1000;
      const alone = readPhoto(card, { front: taken.front });
      front.push({ ...judged, ...alone });
      plain.push({ ...judged, ...alone, cells: peerGrades(card, taken.front, alone.toPx) });
    }
    const [two, one, peer] = [photoScore(both), photoScore(front), photoScore(plain)];
    const told = ({ right, wrong }: PhotoScore): number => right + wrong;
    yield share(`${mood}: cards found`, two.found, two.cards, { atLeast: 0.99, cases: two.lost });
    yield share(`${mood}: shapes right, front and back`, two.right, told(two), {
      atLeast: asked[mood],
      cases: two.mistakes,
    });
    yield share(`${mood}: wrong and sure of it`, two.wrongAndSure, two.shapes, { atMost: 0.003 });
    yield share(`${mood}: can’t tell`, two.cantTell, two.shapes, { atMost: 0.05 });
    yield share(`${mood}: out or in place right, front alone`, one.holesRight, told(one), {
      atLeast: asked[mood],
    });
    yield share(`${mood}: shapes right, front alone`, one.right, told(one));
    yield share(`${mood}: wrong and sure of it, front alone`, one.wrongAndSure, one.shapes, {
      atMost: 0.003,
    });
    const plainly = 'out or in place right by one threshold, the card found for it';
    yield share(`${mood}: ${plainly}`, peer.holesRight, told(peer));
    yield {
      what: `${mood}: ms of processor for a front and a back of 3 megapixels`,
      value: Math.round(ms / each),
    };
  }
}

const share = (
  what: string,
  part: number,
  of: number,
  bound: Pick<Figure, 'atLeast' | 'atMost' | 'cases'> = {},
): Figure => ({
  what: `${what} (of ${String(of)})`,
  value: Number((part / of).toFixed(4)),
  ...bound,
});
