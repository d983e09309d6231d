import { asJpeg } from '../../bench/photo/asJpeg.ts';
import { looks, type Light } from '../../bench/photo/materials.ts';
import { renderPhoto } from '../../bench/photo/renderPhoto.ts';
import { drawScene } from '../../bench/photo/scene.ts';
import type { Card } from '../../src/core/card/card.ts';
import type { Grade } from '../../src/core/reading/grade.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';

/** A card as a phone photographs it, and what was put into the picture. */
export interface Photographed {
  readonly front: Buffer;
  readonly back: Buffer;
  readonly grades: ReadonlyMap<string, Grade>;
}

/** Birch on a dark sheet: the first half of the shapes out, the next hangs, the others are not through. */
export const photograph = async (
  card: Card,
  seed: number,
  backing: Light = [0.08, 0.12, 0.2],
): Promise<Photographed> => {
  const [birch] = looks;
  if (birch === undefined) throw new Error('no looks');
  const middle = Math.floor(card.cells.length / 2);
  const grades = new Map(
    card.cells.map(({ id }, i): [string, Grade] => [
      id,
      i < middle ? 'out' : i === middle ? 'hangs' : 'stays',
    ]),
  );
  const scene = {
    ...drawScene(card, 'fair', seededRandom(seed)),
    look: birch,
    backing,
    grades,
  };
  return {
    grades,
    front: await asJpeg(renderPhoto(scene, 'front'), 90),
    back: await asJpeg(renderPhoto(scene, 'back'), 90),
  };
};

/** A file as a page's file box takes it. */
export const asFile = (name: string, buffer: Buffer, mimeType = 'image/jpeg') => ({
  name,
  mimeType,
  buffer,
});
