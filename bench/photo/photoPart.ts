import type { CellSeen } from '../../src/core/photo/gradeCell.ts';
import { readPhoto } from '../../src/core/photo/readPhoto.ts';
import { inventCards } from '../files/inventCards.ts';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { peerGrades } from './peerGrades.ts';
import type { Mood, Scene } from './scene.ts';
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
    const both = emptyScore();
    const front = emptyScore();
    const peer = emptyScore();
    let ms = 0;
    for (let i = 0; i < each; i += 1) {
      const card = cards[i % cards.length];
      if (card === undefined) continue;
      const taken = await takePhotos(card, mood, seed * 10_000 + 2 * i + (mood === 'hard' ? 1 : 0));
      const name = `${mood} ${String(i)} ${taken.scene.look.name}`;
      const before = process.cpuUsage();
      const read = readPhoto(card, taken);
      ms += process.cpuUsage(before).user / 1000;
      count(both, { name, scene: taken.scene, cells: read.cells, found: read.found });
      const alone = readPhoto(card, { front: taken.front });
      count(front, { name, scene: taken.scene, cells: alone.cells, found: alone.found });
      const simple = peerGrades(card, taken.front, alone.toPx);
      count(peer, { name, scene: taken.scene, cells: simple, found: alone.found });
    }
    yield share(`${mood}: cards found`, both.found, both.cards, {
      atLeast: 0.99,
      cases: both.lost,
    });
    yield share(`${mood}: shapes right, front and back`, both.right, both.told, {
      atLeast: asked[mood],
      cases: both.wrong,
    });
    yield share(`${mood}: wrong and sure of it`, both.wrongSure, both.cells, { atMost: 0.003 });
    yield share(`${mood}: can’t tell`, both.cantTell, both.cells, { atMost: 0.05 });
    yield share(
      `${mood}: out or in place right, front alone`,
      front.rightHole,
      front.cells - front.cantTell,
      { atLeast: asked[mood], cases: front.wrongHole },
    );
    yield share(`${mood}: shapes right, front alone`, front.right, front.told);
    yield share(`${mood}: wrong and sure of it, front alone`, front.wrongSure, front.cells, {
      atMost: 0.003,
    });
    yield share(
      `${mood}: out or in place right by one threshold, the card found for it`,
      peer.rightHole,
      peer.cells,
    );
    yield {
      what: `${mood}: ms of processor for a front and a back of 3 megapixels`,
      value: Math.round(ms / each),
    };
  }
}

/** Surer than this counts as sure. */
const sureFrom = 0.9;

interface Score {
  cards: number;
  found: number;
  cells: number;
  /** Of those, how many got a grade. */
  told: number;
  right: number;
  rightHole: number;
  cantTell: number;
  wrongSure: number;
  readonly lost: string[];
  readonly wrong: string[];
  readonly wrongHole: string[];
}

const emptyScore = (): Score => ({
  cards: 0,
  found: 0,
  cells: 0,
  told: 0,
  right: 0,
  rightHole: 0,
  cantTell: 0,
  wrongSure: 0,
  lost: [],
  wrong: [],
  wrongHole: [],
});

interface Graded {
  readonly name: string;
  readonly scene: Scene;
  readonly cells: readonly CellSeen[];
  readonly found: boolean;
}

const count = (score: Score, { name, scene, cells, found }: Graded): void => {
  score.cards += 1;
  if (!found) {
    score.lost.push(name);
    return;
  }
  score.found += 1;
  for (const { cell, grade, sure } of cells) {
    const truth = scene.grades.get(cell);
    score.cells += 1;
    if (grade === 'cant-tell') {
      score.cantTell += 1;
      continue;
    }
    score.told += 1;
    const said = `${name} ${cell}: ${String(truth)}, read ${grade} (${sure.toFixed(2)})`;
    if (grade === truth) score.right += 1;
    else {
      score.wrong.push(said);
      if (sure >= sureFrom) score.wrongSure += 1;
    }
    if ((grade === 'out') === (truth === 'out')) score.rightHole += 1;
    else score.wrongHole.push(said);
  }
};

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
