import type { EllipseArc } from '../../core/path/ellipseArc.ts';
import type { Point } from '../../core/path/point.ts';
import { endpointArc } from './endpointArc.ts';

/** What path data are told to; a tracer is one. */
export interface PathSink {
  readonly moveTo: (to: Point) => void;
  readonly lineTo: (to: Point) => void;
  readonly curveTo: (controls: readonly Point[]) => void;
  readonly arcTo: (arc: EllipseArc, to: Point) => void;
  readonly close: () => void;
  /** No more is wanted. */
  readonly stopped?: unknown;
}

/** Knows where it stands, so that relative and shortened commands become whole ones. */
export class PathPen {
  readonly #sink: PathSink;
  #at: Point = [0, 0];
  #start: Point = [0, 0];
  /** The last control of the curve before, where it was one of that degree. */
  #cubic: Point | undefined;
  #quadratic: Point | undefined;

  constructor(sink: PathSink) {
    this.#sink = sink;
  }

  close(): void {
    this.#sink.close();
    this.#stand(this.#start);
  }

  draw(kind: string, figures: readonly number[], relative: boolean): void {
    const [ox, oy] = relative ? this.#at : [0, 0];
    const [p = 0, q = 0] = figures;
    const point = (i: number): Point => [ox + (figures[i] ?? 0), oy + (figures[i + 1] ?? 0)];
    switch (kind) {
      case 'M':
        this.#sink.moveTo(point(0));
        this.#start = point(0);
        this.#stand(point(0));
        break;
      case 'L':
        this.#line(point(0));
        break;
      case 'H':
        this.#line([ox + p, this.#at[1]]);
        break;
      case 'V':
        this.#line([this.#at[0], oy + p]);
        break;
      case 'C':
        this.#curve([point(0), point(2), point(4)]);
        break;
      case 'S':
        this.#curve([this.#mirrored(this.#cubic), point(0), point(2)]);
        break;
      case 'Q':
        this.#curve([point(0), point(2)]);
        break;
      case 'T':
        this.#curve([this.#mirrored(this.#quadratic), point(0)]);
        break;
      default: {
        const [, , turnDeg = 0, large = 0, sweep = 0] = figures;
        const radii = [p, q] as const;
        const flags = { large: large === 1, sweep: sweep === 1 };
        this.#arc({ from: this.#at, to: point(5), radii, turnDeg, ...flags });
      }
    }
  }

  #stand(at: Point): void {
    this.#at = at;
    this.#cubic = undefined;
    this.#quadratic = undefined;
  }

  #line(to: Point): void {
    this.#sink.lineTo(to);
    this.#stand(to);
  }

  #curve(controls: readonly [...Point[], Point, Point]): void {
    this.#sink.curveTo(controls);
    const [before, end] = controls.slice(-2);
    this.#stand(end ?? this.#at);
    if (controls.length === 3) this.#cubic = before;
    else this.#quadratic = before;
  }

  #arc(task: Parameters<typeof endpointArc>[0]): void {
    const arc = endpointArc(task);
    if (arc === undefined) this.#sink.lineTo(task.to);
    else this.#sink.arcTo(arc, task.to);
    this.#stand(task.to);
  }

  /** The control across the place where the pen stands; that place itself after anything else. */
  #mirrored(control: Point | undefined): Point {
    return control === undefined
      ? this.#at
      : [2 * this.#at[0] - control[0], 2 * this.#at[1] - control[1]];
  }
}
