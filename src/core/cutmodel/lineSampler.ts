import type { QuasiRandomPoints } from '../../num/quasiRandomPoints.ts';
import type { Target } from './likelihood.ts';
import { blankLine, type Proposal } from './proposal.ts';

/** A line is followed each way until the density has fallen by this much in ln below its highest. */
const furthestDrop = 9;
const leastReach = 2;
const mostReach = 40;

/** Weighted points in z, gathered line by line. */
export interface LineSampler {
  /** Draws lines `from` to `to` of the cube and adds their points; each is worth `factor` (a ln) more. */
  readonly addLines: (
    target: Target,
    proposal: Proposal,
    lines: { readonly from: number; readonly to: number; readonly factor: number },
    link: number,
  ) => void;
  readonly points: () => WeightedPoints;
}

export interface WeightedPoints {
  readonly count: number;
  readonly size: number;
  /** z of one point after the other. */
  readonly z: Float64Array;
  /** ln of posterior over proposal, constants left out. */
  readonly logWeight: Float64Array;
  /** Index into the links. */
  readonly link: Uint8Array;
  /** On which line a point lies. */
  readonly line: Uint32Array;
}

/** About how many points a line has. */
const usualPoints = 8;

/** Points of about so many lines, of a cube with `size` dimensions. */
export const lineSampler = (size: number, cube: QuasiRandomPoints, lines: number): LineSampler => {
  let room = usualPoints * lines;
  let count = 0;
  let z = new Float64Array(room * size);
  let logWeight = new Float64Array(room);
  let link = new Uint8Array(room);
  let ofLine = new Uint32Array(room);
  const line = blankLine(size);
  const at = new Float64Array(size);
  const coordinates = new Float64Array(size + 1);

  const add = (value: number, linkIndex: number, lineIndex: number): void => {
    if (count === room) {
      room *= 2;
      z = grown(z, new Float64Array(room * size));
      logWeight = grown(logWeight, new Float64Array(room));
      link = grown(link, new Uint8Array(room));
      ofLine = grown(ofLine, new Uint32Array(room));
    }
    for (let i = 0, first = count * size; i < size; i += 1) z[first + i] = at[i] ?? NaN;
    logWeight[count] = value;
    link[count] = linkIndex;
    ofLine[count] = lineIndex;
    count += 1;
  };

  return {
    addLines: (target, proposal, { from, to, factor }, linkIndex) => {
      for (let index = from; index < to; index += 1) {
        // Hammersley's points: the first coordinate in even steps, the others of a sequence, the last of them first.
        coordinates[0] = (index - from + 0.5) / (to - from);
        coordinates[size] = cube.at(index, 0);
        for (let d = 1; d < size; d += 1) coordinates[d] = cube.at(index, d);
        proposal.draw(coordinates, line);
        const { origin, step } = line;
        at.set(origin);
        let most = target.value(at);
        if (most > -Infinity) add(most + factor - line.logDensityAt(0), linkIndex, index);
        for (const sign of ways) {
          for (let k = 1; k <= mostReach; k += 1) {
            const by = sign * k;
            for (let i = 0; i < size; i += 1) at[i] = (origin[i] ?? NaN) + by * (step[i] ?? NaN);
            const value = target.value(at);
            if (k > leastReach && !(value >= most - furthestDrop)) break;
            if (value > most) most = value;
            if (value > -Infinity) add(value + factor - line.logDensityAt(by), linkIndex, index);
          }
        }
      }
    },
    points: () => ({ count, size, z, logWeight, link, line: ofLine }),
  };
};

const ways = [1, -1] as const;

const grown = <T extends { set: (from: T) => void }>(from: T, into: T): T => {
  into.set(from);
  return into;
};
