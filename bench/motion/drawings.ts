import { writeText } from '../../src/core/card/letters.ts';
import { shapeOutline, testShapeNames } from '../../src/core/card/testShapes.ts';
import type { JobMove } from '../../src/core/motion/jobTime.ts';
import type { Point } from '../../src/core/path/point.ts';
import { closed, placed, type Polyline } from '../../src/core/path/polyline.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';

const between = (random: SeededRandom, low: number, high: number): number =>
  low + (high - low) * random.uniform();

/** Panels with finger joints along all sides. */
const panel = (random: SeededRandom): Polyline => {
  const finger = between(random, 4, 12);
  const depth = between(random, 2, 6);
  const [across, up] = [1 + 2 * (2 + random.integer(5)), 1 + 2 * (1 + random.integer(4))];
  const side = (count: number): readonly Point[] =>
    Array.from({ length: count }, (_, i): readonly Point[] => {
      const out = i % 2 === 0 ? 0 : -depth;
      return [
        [i * finger, out],
        [(i + 1) * finger, out],
      ];
    }).flat();
  const turned = (points: readonly Point[], quarter: number, at: Point): readonly Point[] => {
    const [c = 1, s = 0] = [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ][quarter] ?? [1, 0];
    return points.map(([x, y]): Point => [at[0] + c * x - s * y, at[1] + s * x + c * y]);
  };
  const [width, height] = [across * finger, up * finger];
  return closed([
    ...turned(side(across), 0, [0, 0]),
    ...turned(side(up), 1, [width, 0]),
    ...turned(side(across), 2, [width, height]),
    ...turned(side(up), 3, [0, height]),
  ]);
};

/** A closed curve without corners, in chords. */
const blob = (random: SeededRandom): Polyline => {
  const radius = between(random, 4, 40);
  const waves = Array.from({ length: 3 }, (_, k) => ({
    size: between(random, 0, 0.25 / (k + 1)),
    at: between(random, 0, 6.28),
  }));
  const chords = Math.max(24, Math.round((2 * Math.PI * radius) / between(random, 0.4, 1.5)));
  return closed(
    Array.from({ length: chords }, (_, i): Point => {
      const angle = (2 * Math.PI * i) / chords;
      const r =
        radius *
        waves.reduce((sum, { size, at }, k) => sum + size * Math.sin((k + 2) * angle + at), 1);
      return [r * Math.cos(angle), r * Math.sin(angle)];
    }),
  );
};

const shape = (random: SeededRandom): Polyline =>
  shapeOutline(
    testShapeNames[random.integer(testShapeNames.length)] ?? 'star',
    between(random, 8, 45),
  );

const words = ['PLY 3 MM', 'K7QX', '14 mm/s 30%', 'north side up', 'shelf 4B'];

const kinds: readonly ((random: SeededRandom) => readonly Polyline[])[] = [
  (random) => [shape(random)],
  (random) => [panel(random)],
  (random) => [blob(random)],
  (random) =>
    writeText(words[random.integer(words.length)] ?? '', [0, 0], { capMm: between(random, 2, 9) }),
];

/** An invented drawing that no fit has seen: 4 to 20 things of one or two kinds on a bed, at the speed of cutting sheet. */
export const inventDrawing = (random: SeededRandom): readonly JobMove[] => {
  const speedMmPerS = Math.round(2 * Math.exp(between(random, Math.log(8), Math.log(60)))) / 2;
  const of = [random.integer(kinds.length), random.integer(kinds.length)] as const;
  const things = 4 + random.integer(17);
  return Array.from({ length: things }, (_, i): readonly JobMove[] => {
    const at: Point = [between(random, 0, 350), between(random, 0, 250)];
    return (kinds[of[i % 2] ?? 0]?.(random) ?? []).map((points) => ({
      kind: 'cut',
      points: placed(points, at),
      speedMmPerS,
      passes: 1,
    }));
  }).flat();
};
