import type { ClimbSheet } from '../../../core/running/climb.ts';
import { speedWords } from '../../../words/texts.ts';

interface Keeps {
  readonly sureMmPerS?: number | null;
  readonly evenMmPerS?: number | null;
  readonly hardlyMmPerS?: number | null;
}

/** The sheet that comes next, and what is known before it. */
export interface Next {
  readonly speedMmPerS: number;
  readonly keeps: Keeps;
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The climb as lines and places of a picture. */
export interface ClimbPlot {
  readonly frame: typeof frame;
  /** Round speeds across. */
  readonly lines: readonly { readonly y: number; readonly label: string }[];
  readonly numbers: readonly { readonly x: number; readonly label: string }[];
  readonly bands: readonly string[];
  readonly even: readonly string[];
  readonly steps: string;
  readonly marks: readonly (Spot & { readonly number: number; readonly notOut: number })[];
  readonly others: readonly (Spot & { readonly key: string })[];
  readonly next?: Spot;
}

const frame = { width: 640, height: 360, left: 124, right: 20, top: 20, bottom: 44 } as const;

/** A picture of few sheets leaves room for those to come. */
const leastPlaces = 6;

/** Every so many sheets have their number below. */
const mostNumbers = 10;

/** Where everything of the climb stands. O(sheets). */
export const climbPlot = (climb: readonly ClimbSheet[], next?: Next): ClimbPlot => {
  const known = climb.map(({ keeps }) => boundsOf(keeps));
  const all = [...known, boundsOf(next?.keeps)];
  const places = Math.max(leastPlaces, climb.length + (next === undefined ? 0 : 1));
  const [low, high] = rangeOf(climb, next, all);
  const wide = frame.width - frame.left - frame.right;
  const high0 = frame.height - frame.top - frame.bottom;
  const x = (place: number): number => frame.left + ((place + 0.5) / places) * wide;
  const y = (speed: number): number =>
    frame.top + ((Math.log(high) - Math.log(speed)) / (Math.log(high) - Math.log(low))) * high0;
  const half = wide / places / 2;
  const clip = (speed: number): number => y(Math.min(high, Math.max(low, speed)));
  const at = ({ speedMmPerS }: { readonly speedMmPerS: number }, place: number): Spot => ({
    x: x(place),
    y: y(speedMmPerS),
  });
  const every = Math.ceil(places / mostNumbers);
  return {
    frame,
    lines: roundSpeeds(low, high).map((speed) => ({ y: y(speed), label: speedWords(speed) })),
    numbers: Array.from({ length: places }, (_, i) => i)
      .filter((i) => i % every === 0)
      .map((i) => ({ x: x(i), label: String(i + 1) })),
    bands: all.flatMap((band, place) =>
      band === undefined
        ? []
        : [
            `M${(x(place) - half).toFixed(1)} ${clip(band.hardly).toFixed(1)}H${(x(place) + half).toFixed(1)}` +
              `V${clip(band.sure).toFixed(1)}H${(x(place) - half).toFixed(1)}Z`,
          ],
    ),
    even: all.flatMap((band, place) =>
      band === undefined
        ? []
        : [
            `M${(x(place) - half).toFixed(1)} ${clip(band.even).toFixed(1)}H${(x(place) + half).toFixed(1)}`,
          ],
    ),
    steps: climb
      .map(
        ({ speedMmPerS }, i) =>
          `${i === 0 ? 'M' : 'L'}${x(i).toFixed(1)} ${y(speedMmPerS).toFixed(1)}`,
      )
      .join(''),
    marks: climb.map((sheet, i) => ({
      ...at(sheet, i),
      number: sheet.number,
      notOut: sheet.notOut,
    })),
    others: climb.flatMap((sheet, i) =>
      sheet.others.map((other) => ({
        ...at(other, i),
        key: `${String(sheet.number)} ${String(other.speedMmPerS)}`,
      })),
    ),
    ...(next === undefined ? {} : { next: at(next, climb.length) }),
  };
};

interface Band {
  readonly sure: number;
  readonly even: number;
  readonly hardly: number;
}

const boundsOf = (keeps: Keeps | undefined): Band | undefined => {
  const sure = keeps?.sureMmPerS ?? undefined;
  const hardly = keeps?.hardlyMmPerS ?? undefined;
  if (sure === undefined || hardly === undefined) return undefined;
  return { sure, hardly, even: keeps?.evenMmPerS ?? sure };
};

/** All speeds that were cut, with the band as far as it is near them. */
const rangeOf = (
  climb: readonly ClimbSheet[],
  next: Next | undefined,
  bands: readonly (Band | undefined)[],
): readonly [low: number, high: number] => {
  const cut = [
    ...climb.flatMap(({ speedMmPerS, others }) => [
      speedMmPerS,
      ...others.map((other) => other.speedMmPerS),
    ]),
    ...(next === undefined ? [] : [next.speedMmPerS]),
  ];
  const [slowest, fastest] = [Math.min(...cut), Math.max(...cut)];
  const near = bands.flatMap((band) => (band === undefined ? [] : [band.sure, band.hardly]));
  const low = Math.max(0.75 * slowest, Math.min(slowest, ...near));
  const high = Math.min(1.35 * fastest, Math.max(fastest, ...near));
  return [0.96 * low, 1.04 * high];
};

/** Three to six round speeds between two. */
const roundSpeeds = (low: number, high: number): readonly number[] => {
  const rough = (high - low) / 4;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((one) => one * power >= rough) ?? 10) * power;
  const first = Math.ceil(low / step) * step;
  return Array.from({ length: Math.floor((high - first) / step) + 1 }, (_, i) =>
    Number((first + i * step).toPrecision(6)),
  );
};
