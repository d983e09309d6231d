import type { PathLine } from '../../core/filecheck/toolpath.ts';
import { parseLayerName } from '../../core/card/settingWords.ts';
import { mapped, shift, times, type Matrix } from '../../core/path/matrix.ts';
import { Tracer } from '../../core/path/tracer.ts';
import { refused, type Outcome } from '../../core/problem.ts';
import { Noticed } from '../noticed.ts';
import { refuseStopped, tracerLimits, type ReadingOptions } from '../reading.ts';
import { readingLimits } from '../readingLimits.ts';
import { refuseUnreadable } from '../refuseDrawing.ts';
import type { DxfFile } from './dxfFile.ts';
import { notesLayer } from './notesLayer.ts';
import { dxfKey, type DxfBlock, type DxfLayer, type DxfPart, type Stroke } from './dxfPart.ts';

/** What an insert hands down to what is in its block. */
interface State {
  readonly matrix: Matrix;
  readonly depth: number;
  /** For what lies on layer 0 of a block, which takes the layer of its insert. */
  readonly layer: string | undefined;
  /** For what takes the colour of its insert. */
  readonly colour: number | undefined;
  readonly copying: Copying | undefined;
}

interface Copying {
  readonly block: DxfBlock;
  readonly outer: Copying | undefined;
}

type Insert = Extract<DxfPart, { kind: 'insert' }>;

/** Draws the parts of a file in their order, blocks where they are inserted. One step is one part. */
export class DxfDrawing {
  readonly lines: PathLine[] = [];
  readonly noticed = new Noticed();
  problem: Outcome<never> | undefined;
  /** Parts on the sheet that is printed. */
  paper = 0;
  /** Curves of which only some points are known. */
  guessed = 0;
  readonly #file: DxfFile;
  readonly #tracer: Tracer;
  readonly #waiting: { readonly part: DxfPart; readonly state: State }[] = [];
  /** What the name of a layer says, worked out once. */
  readonly #layers = new Map<string, Pick<PathLine, 'layer' | 'spelt'>>();
  #asked = 0;

  constructor(file: DxfFile, unitMm: number, options: ReadingOptions) {
    this.#file = file;
    this.#tracer = new Tracer(tracerLimits(options));
    this.#push(file.parts, {
      matrix: [unitMm, 0, 0, unitMm, 0, 0],
      depth: 0,
      layer: undefined,
      colour: undefined,
      copying: undefined,
    });
  }

  /** Draws what is left, until something is refused. */
  finish(): void {
    while (this.#step());
  }

  /** The next part; false when there is none, or when something was refused. */
  #step(): boolean {
    const next = this.#waiting.pop();
    if (next === undefined || this.problem !== undefined) return false;
    this.#draw(next.part, next.state);
    return true;
  }

  #push(parts: readonly DxfPart[], state: State): void {
    this.#count(parts.length);
    if (state.depth > readingLimits.depth)
      this.problem ??= refuseUnreadable('DXF', 'blocks within blocks without end');
    if (this.problem !== undefined) return;
    for (const part of parts.toReversed()) this.#waiting.push({ part, state });
  }

  #count(parts: number): void {
    this.#asked += parts;
    if (!(this.#asked <= readingLimits.parts))
      this.problem ??= refused('drawing-too-many-parts', { most: readingLimits.parts });
  }

  #draw(part: DxfPart, state: State): void {
    const layerName = part.layer === '0' ? (state.layer ?? '0') : part.layer;
    const layer = this.#file.layers.get(dxfKey(layerName));
    const frozen = part.invisible || layer?.frozen === true;
    const off = layer?.off === true && part.kind !== 'insert';
    if (part.kind === 'text' && layerName === notesLayer) return;
    if (part.paper) {
      this.paper += 1;
      return;
    }
    if (frozen || off) {
      this.noticed.hidden(layer?.name ?? layerName);
      return;
    }
    switch (part.kind) {
      case 'stroke':
        this.#stroke(part.stroke, times(state.matrix, part.matrix), {
          ...this.#named(layer?.name ?? layerName),
          ...this.#coloured(part, state, layer),
        });
        if (part.guessed) this.guessed += 1;
        break;
      case 'insert':
        this.#insert(part, layerName, state, layer);
        break;
      case 'text':
        this.noticed.text(part.words, mapped(state.matrix, part.at));
        break;
      case 'unread':
        this.noticed.unread.add(part.what);
    }
  }

  #named(layer: string): Pick<PathLine, 'layer' | 'spelt'> {
    const known = this.#layers.get(layer);
    if (known !== undefined) return known;
    const spelt = parseLayerName(layer);
    const named = { layer, ...(spelt === undefined ? {} : { spelt }) };
    this.#layers.set(layer, named);
    return named;
  }

  #coloured(part: DxfPart, state: State, layer: DxfLayer | undefined): Pick<PathLine, 'colour'> {
    const index = (part.colour === 0 ? state.colour : part.colour) ?? layer?.colour;
    return index === undefined ? {} : { colour: `colour ${String(index)}` };
  }

  #stroke(stroke: Stroke, matrix: Matrix, about: Partial<PathLine>): void {
    const tracer = this.#tracer;
    tracer.under(matrix);
    tracer.moveTo(stroke.from);
    for (const step of stroke.steps) {
      if (tracer.stopped !== undefined) break;
      if ('piece' in step) tracer.pieceTo(step.piece);
      else if ('controls' in step) tracer.curveTo(step.controls);
      else if (step.arc === undefined) tracer.lineTo(step.to);
      else tracer.arcTo(step.arc, step.to);
    }
    const lines = tracer.taken();
    if (tracer.stopped !== undefined)
      this.problem = refuseStopped(tracer.stopped, this.lines.length + 1);
    else
      for (const points of lines)
        this.lines.push({ points, passes: 1, ...about, where: this.lines.length + 1 });
  }

  #insert(part: Insert, layerName: string, state: State, layer: DxfLayer | undefined): void {
    const block = this.#file.blocks.get(dxfKey(part.block));
    if (block === undefined || block.elsewhere) {
      this.noticed.unread.add(`block ${part.block.slice(0, 40)}`);
      return;
    }
    for (let at = state.copying; at !== undefined; at = at.outer) {
      if (at.block !== block) continue;
      this.problem = refused('drawing-copies-itself', { name: part.block.slice(0, 40) });
      return;
    }
    // Copies count even where they are empty, before any is made.
    this.#count(part.rows * part.columns);
    if (this.problem !== undefined) return;
    const inner = {
      ...state,
      depth: state.depth + 1,
      layer: layerName,
      colour: (part.colour === 0 ? state.colour : part.colour) ?? layer?.colour,
      copying: { block, outer: state.copying },
    };
    const [toBase, inBlock] = [shift([-block.base[0], -block.base[1]]), part.matrix];
    for (let row = part.rows - 1; row >= 0; row -= 1)
      for (let column = part.columns - 1; column >= 0; column -= 1) {
        const way = shift([
          column * part.across[0] + row * part.up[0],
          column * part.across[1] + row * part.up[1],
        ]);
        const matrix = times(state.matrix, times(way, times(inBlock, toBase)));
        this.#push(block.parts, { ...inner, matrix });
      }
  }
}
