import type { Card } from '../../src/core/card/card.ts';
import type { Grade } from '../../src/core/reading/grade.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';
import { contrastingBacking, looks, type Light, type Look } from './materials.ts';

export type Mood = 'fair' | 'hard';

/** All that makes a photograph of a card. */
export interface Scene {
  readonly card: Card;
  readonly grades: ReadonlyMap<string, Grade>;
  readonly look: Look;
  readonly backing: Light;
  readonly mood: Mood;
  readonly thicknessMm: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** From straight above, and towards where. */
  readonly tiltDeg: number;
  readonly towardsDeg: number;
  readonly rollDeg: number;
  /** Which share of the picture's width or height the card fills. */
  readonly fills: number;
  /** How the light falls off across the picture, and where from. */
  readonly falloff: readonly [number, number];
  readonly lightDeg: number;
  readonly lightSlope: number;
  readonly tint: Light;
  readonly exposure: number;
  /** A hand's shadow: middle and size as shares of the card, and what is left of the light. */
  readonly shadow: {
    readonly at: readonly [number, number];
    readonly size: number;
    readonly left: number;
  } | null;
  /** A thumb on a corner, mm. */
  readonly thumbMm: number;
  readonly smoke: number;
  readonly blurPx: number;
  readonly motionPx: number;
  readonly motionDeg: number;
  readonly noise: number;
  readonly quality: number;
  readonly seed: number;
}

/** Draws a scene: fair is a phone held over the bench by a window, hard is all that goes wrong at once. */
export const drawScene = (card: Card, mood: Mood, random: SeededRandom): Scene => {
  const between = (low: number, high: number): number => low + (high - low) * random.uniform();
  const hard = mood === 'hard';
  const look = looks[random.integer(looks.length)] ?? looks[0];
  if (look === undefined) throw new Error('no looks');
  return {
    card,
    grades: drawGrades(card, random),
    look,
    backing: contrastingBacking(look, random),
    mood,
    thicknessMm: card.thicknessMm ?? 3,
    widthPx: 2000,
    heightPx: 1500,
    tiltDeg: hard ? between(10, 45) : between(0, 20),
    towardsDeg: between(0, 360),
    rollDeg: between(0, 360),
    fills: hard ? between(0.5, 0.85) : between(0.65, 0.9),
    falloff: hard
      ? [between(-0.5, 0.5), between(-0.5, 0.5)]
      : [between(-0.2, 0.2), between(-0.2, 0.2)],
    lightDeg: between(0, 360),
    lightSlope: hard ? between(0.3, 1.3) : between(0.1, 0.6),
    tint: hard
      ? [between(0.85, 1.25), 1, between(0.7, 1.15)]
      : [between(0.95, 1.1), 1, between(0.85, 1.05)],
    exposure: hard ? between(0.6, 1.15) : between(0.85, 1.05),
    shadow:
      hard && random.uniform() < 0.6
        ? {
            at: [random.uniform(), random.uniform()],
            size: between(0.3, 0.7),
            left: between(0.35, 0.7),
          }
        : null,
    thumbMm: hard && random.uniform() < 0.3 ? between(6, 11) : 0,
    smoke: look.grain > 0 || look.clear === 0 ? between(0, hard ? 0.5 : 0.2) : 0,
    blurPx: hard ? between(0.6, 1.6) : between(0.4, 0.9),
    motionPx: hard && random.uniform() < 0.5 ? between(1, 5) : 0,
    motionDeg: between(0, 360),
    noise: hard ? between(0.006, 0.02) : between(0.002, 0.006),
    quality: hard ? 60 + random.integer(25) : 80 + random.integer(15),
    seed: random.integer(1e9),
  };
};

/** As a card comes out: the slow ones out, then some that hang, then not through, with single ones out of line. */
const drawGrades = (card: Card, random: SeededRandom): ReadonlyMap<string, Grade> => {
  const where = random.uniform() * card.cells.length;
  return new Map(
    card.cells.map(({ id }, i) => {
      const from = i - where + 2 * random.normal();
      return [id, from < -0.7 ? 'out' : from < 0.7 ? 'hangs' : 'stays'];
    }),
  );
};
