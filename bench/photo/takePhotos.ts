import type { Card } from '../../src/core/card/card.ts';
import type { Photos } from '../../src/core/photo/readPhoto.ts';
import type { Picture } from '../../src/core/photo/picture.ts';
import { decodePhoto } from '../../src/host/decodePhoto.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { asJpeg } from './asJpeg.ts';
import { renderPhoto } from './renderPhoto.ts';
import { drawScene, type Mood, type Scene } from './scene.ts';

/** A card photographed from both sides, as the files of a phone come out when they are decoded. */
export interface Taken extends Required<Omit<Photos, 'corners'>> {
  readonly scene: Scene;
}

export const takePhotos = async (card: Card, mood: Mood, seed: number): Promise<Taken> => {
  const random = seededRandom(seed);
  const scene = drawScene(card, mood, random);
  // Turned over and taken again: from elsewhere, and no thumb where it was.
  const behind: Scene = {
    ...scene,
    rollDeg: 360 * random.uniform(),
    towardsDeg: 360 * random.uniform(),
    thumbMm: 0,
  };
  return {
    scene,
    front: await taken(scene, 'front'),
    back: await taken(behind, 'back'),
  };
};

const taken = async (scene: Scene, side: 'front' | 'back'): Promise<Picture> => {
  const decoded = await decodePhoto(await asJpeg(renderPhoto(scene, side), scene.quality), side);
  if (!decoded.ok) throw new Error(decoded.problem.code);
  return decoded.value;
};
