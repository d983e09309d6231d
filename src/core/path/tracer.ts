import { chordsOfBezier, pointOnBezier } from './bezier.ts';
import {
  chordsOfArc,
  longestRadius,
  mappedArc,
  pointOnArc,
  type EllipseArc,
} from './ellipseArc.ts';
import { mapped, unchanged, type Matrix } from './matrix.ts';
import type { SplinePiece } from './nurbs.ts';
import { distanceMm, type Point } from './point.ts';
import type { Polyline } from './polyline.ts';
import { rationalPoints } from './rationalBezier.ts';

/** How far a chord may stray from the curve that it stands for, in mm, where nothing else is said. */
export const usualToleranceMm = 0.01;

export interface TracerLimits {
  /** How far a chord may stray from its curve, mm. */
  readonly toleranceMm: number;
  /** Points of all lines together. */
  readonly mostPoints: number;
  /** From zero, in each direction, mm. */
  readonly farthestMm: number;
}

/** What a drawing may ask for that no bed needs. */
export type TracerStop = 'too-many-points' | 'too-far';

/**
 * Draws what it is told, in the coordinates of whoever tells it, as lines of points in mm. It stops for good, saying
 * why, at the first place that lies too far away or is no number, and where there are more points than allowed: so it
 * costs no more than its limits, whatever it is told.
 */
export class Tracer {
  readonly #limits: TracerLimits;
  #matrix: Matrix = unchanged;
  #lines: Point[][] = [];
  #line: Point[] = [];
  #points = 0;
  #stopped: TracerStop | undefined;
  /** Where the pen stands, in the teller's coordinates. */
  #at: Point = [0, 0];
  #start: Point = [0, 0];

  constructor(limits: TracerLimits) {
    this.#limits = limits;
  }

  get stopped(): TracerStop | undefined {
    return this.#stopped;
  }

  /** Points drawn so far, those taken away with `taken` included. */
  get points(): number {
    return this.#points;
  }

  /** From the teller's coordinates to mm, from here on. */
  under(matrix: Matrix): void {
    this.#matrix = matrix;
  }

  moveTo(to: Point): void {
    this.#finish();
    this.#at = to;
    this.#start = to;
  }

  lineTo(to: Point): void {
    this.#push(mapped(this.#matrix, to));
    this.#at = to;
  }

  /** A Bézier curve from where the pen stands, over the controls, the last of which is its end. */
  curveTo(controls: readonly Point[]): void {
    const all = [this.#at, ...controls].map((point) => mapped(this.#matrix, point));
    this.#at = controls.at(-1) ?? this.#at;
    if (!all.every((point) => this.#allows(point))) return;
    const chords = chordsOfBezier(all, this.#limits.toleranceMm);
    if (!this.#hasRoomFor(chords)) return;
    for (let i = 1; i < chords; i += 1) this.#push(pointOnBezier(all, i / chords));
    this.#push(all.at(-1) ?? mapped(this.#matrix, this.#at));
  }

  /** A piece of a spline, from its first control on; a pen that stands elsewhere is set down there. */
  pieceTo(piece: SplinePiece): void {
    const [first, ...rest] = piece.controls;
    if (first === undefined) return;
    if (this.#line.length === 0 || distanceMm(this.#at, first) > this.#limits.toleranceMm)
      this.moveTo(first);
    if (piece.weights === undefined) this.curveTo(rest);
    else this.#rationalTo(piece);
  }

  #rationalTo(piece: SplinePiece): void {
    const controls = piece.controls.map((point) => mapped(this.#matrix, point));
    this.#at = piece.controls.at(-1) ?? this.#at;
    if (!controls.every((point) => this.#allows(point))) return;
    const room = this.#limits.mostPoints - this.#points;
    const { toleranceMm } = this.#limits;
    for (const point of rationalPoints({ ...piece, controls }, toleranceMm, room))
      this.#push(point);
  }

  /** An arc that begins where the pen stands and ends at `to`, to the last digit. */
  arcTo(arc: EllipseArc, to: Point): void {
    const there = mappedArc(this.#matrix, arc);
    this.#at = to;
    const radius = longestRadius(there);
    if (!this.#allows(there.centre) || !this.#allows([radius, 0])) return;
    const chords = chordsOfArc(there, this.#limits.toleranceMm);
    if (!this.#hasRoomFor(chords)) return;
    for (let i = 1; i < chords; i += 1)
      this.#push(pointOnArc(there, there.fromRad + (there.turnRad * i) / chords));
    this.#push(mapped(this.#matrix, to));
  }

  /** Back to where the line began; what follows goes on from there. */
  close(): void {
    const [first] = this.#line;
    const last = this.#line.at(-1);
    if (first !== undefined && last !== undefined && (last[0] !== first[0] || last[1] !== first[1]))
      this.#push(first);
    this.moveTo(this.#start);
  }

  /** The lines since the last time, in the order in which they were drawn; what has no length is none. */
  taken(): readonly Polyline[] {
    this.#finish();
    const lines = this.#lines;
    this.#lines = [];
    return lines;
  }

  #finish(): void {
    if (this.#line.length > 1) this.#lines.push(this.#line);
    this.#line = [];
  }

  #push(point: Point): void {
    if (this.#line.length === 0) {
      const start = mapped(this.#matrix, this.#start);
      if (!this.#allows(start)) return;
      this.#line.push(start);
      this.#points += 1;
    }
    const last = this.#line.at(-1);
    if (last?.[0] === point[0] && last[1] === point[1]) return;
    if (!this.#allows(point) || !this.#hasRoomFor(1)) return;
    this.#line.push(point);
    this.#points += 1;
  }

  #hasRoomFor(points: number): boolean {
    if (!(this.#points + points <= this.#limits.mostPoints)) this.#stopped ??= 'too-many-points';
    return this.#stopped === undefined;
  }

  #allows([x, y]: Point): boolean {
    const { farthestMm } = this.#limits;
    if (!(Math.abs(x) <= farthestMm && Math.abs(y) <= farthestMm)) this.#stopped ??= 'too-far';
    return this.#stopped === undefined;
  }
}
