import type { Point } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import type { JobMove } from './jobTime.ts';

/** What a job to be timed brings out. */
export const timedJobKinds = [
  'far-travel',
  'right-angles',
  'many-starts',
  'long-runs',
  'gentle-corners',
  'short-zigzag',
] as const;
export type TimedJobKind = (typeof timedJobKinds)[number];

/** A job to be run with the beam disarmed and timed, from the lower left corner of its box. */
export interface JobToTime {
  readonly kind: TimedJobKind;
  readonly moves: readonly JobMove[];
}

/** How far and how fast the head of a machine goes. */
interface Reach {
  readonly bed?: { readonly widthMm: number; readonly heightMm: number };
  readonly speedRangeMmPerS: readonly [least: number, most: number];
}

/**
 * Jobs in which each unknown of the motion shows: the acceleration where the head turns straight back, the corner's rule
 * at three angles, travel, and what every start costs. In the order in which they are worth most: three give a first answer,
 * six tell all (measured in the bench). Each takes some 20 to 90 s on a common machine, so that a stopwatch will do.
 *
 * They are run with the beam disarmed: whoever shows them shows the caution of the act `timedJobs`.
 */
export const jobsToTime = (
  { bed, speedRangeMmPerS: [, fastest] }: Reach,
  count: number = timedJobKinds.length,
): readonly JobToTime[] => {
  const across = Math.min(300, 0.8 * (bed?.widthMm ?? 375));
  const room: Room = {
    acrossMm: across,
    upMm: Math.min(200, 0.8 * (bed?.heightMm ?? 250)),
    speedMmPerS: Math.min(80, fastest),
  };
  return timedJobKinds.slice(0, count).map((kind) => ({ kind, moves: made[kind](room) }));
};

interface Room {
  readonly acrossMm: number;
  readonly upMm: number;
  readonly speedMmPerS: number;
}

const cut = (points: Polyline, { speedMmPerS }: Room): JobMove => ({
  kind: 'cut',
  points,
  speedMmPerS,
  passes: 1,
});

const times = <T>(count: number, make: (i: number) => T): readonly T[] =>
  Array.from({ length: count }, (_, i) => make(i));

const made: Readonly<Record<TimedJobKind, (room: Room) => readonly JobMove[]>> = {
  /** There and back on 3 mm, along each axis. */
  'short-zigzag': (room) => [
    cut(
      times(201, (i): Point => [3 * (i % 2), 0]),
      room,
    ),
    cut(
      times(201, (i): Point => [0, 3 * (i % 2)]),
      room,
    ),
  ],

  /** Short lines at far ends, by turns across and up the bed. */
  'far-travel': (room) =>
    times(32, (i): JobMove => {
      const [x, y] = [i % 2 === 0 ? 0 : room.acrossMm, i % 4 < 2 ? 0 : room.upMm];
      return cut(
        [
          [x, y],
          [x + (i % 2 === 0 ? 5 : -5), y],
        ],
        room,
      );
    }),

  /** A staircase of 2 mm steps up, and down again. */
  'right-angles': (room) => {
    const steps = Math.min(100, Math.floor(Math.min(room.acrossMm, room.upMm) / 2));
    const up = times(2 * steps + 1, (i): Point => [2 * Math.ceil(i / 2), 2 * Math.floor(i / 2)]);
    return [cut([...up, ...up.toReversed().slice(1)], room)];
  },

  /** Lines of 2 mm, 6 mm apart; from the first row again where the bed has no room for more. */
  'many-starts': (room) => {
    const perRow = Math.max(1, Math.floor(room.acrossMm / 6));
    const rows = Math.max(1, Math.floor(room.upMm / 6));
    return times(120, (i): JobMove => {
      const [x, y] = [6 * (i % perRow), 6 * (Math.floor(i / perRow) % rows)];
      return cut(
        [
          [x, y],
          [x + 2, y],
        ],
        room,
      );
    });
  },

  /** A ring of 24 corners of 15°, round and round. */
  'gentle-corners': (room) => {
    const radius = Math.min(12, room.acrossMm / 2, room.upMm / 2);
    return [
      cut(
        times(24 * 20 + 1, (i): Point => {
          const angle = (2 * Math.PI * i) / 24;
          return [radius * (1 - Math.cos(angle)), radius * (1 + Math.sin(angle))];
        }),
        room,
      ),
    ];
  },

  /** Rows across the bed, 5 mm apart. */
  'long-runs': (room) => {
    const rows = Math.min(8, Math.floor(room.upMm / 5));
    return [
      cut(
        times(2 * rows, (i): Point => {
          const [row, isEnd] = [Math.floor(i / 2), i % 2 === 1];
          return [(row % 2 === 0) === isEnd ? room.acrossMm : 0, 5 * row];
        }),
        room,
      ),
    ];
  },
};
