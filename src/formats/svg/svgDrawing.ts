import type { PathLine } from '../../core/filecheck/toolpath.ts';
import { mapped, shift, times } from '../../core/path/matrix.ts';
import type { Point } from '../../core/path/point.ts';
import { Tracer } from '../../core/path/tracer.ts';
import { refused, type Outcome } from '../../core/problem.ts';
import { Noticed } from '../noticed.ts';
import { refuseStopped, tracerLimits, type ReadingOptions } from '../reading.ts';
import { readingLimits } from '../readingLimits.ts';
import { refuseUnreadable } from '../refuseDrawing.ts';
import { passes } from './svgConditions.ts';
import { framed, type CopySize } from './svgFrame.ts';
import { svgLength } from './svgLength.ts';
import { Owns } from './svgOwn.ts';
import { drawShape, shapeNames } from './svgShape.ts';
import { colourOf, isStrokeless, isUnseen, outermost, within, type SvgState } from './svgState.ts';
import type { Style, StyleSheet } from './svgStyle.ts';
import type { SvgNode, SvgTree } from './svgTree.ts';
import type { SvgPage } from './svgViewBox.ts';

interface Task {
  readonly node: SvgNode;
  readonly state: SvgState;
  /** For what is copied: the size that the copy asks for. */
  readonly copy?: CopySize;
}

interface Drawn {
  readonly tree: SvgTree;
  readonly sheet: StyleSheet;
  readonly page: SvgPage;
  readonly options: ReadingOptions;
}

/** Walks a tree in the order in which it is painted, and draws what it finds. One step is one element. */
export class SvgDrawing {
  readonly lines: PathLine[] = [];
  /** The groups that are shown. */
  readonly groups = new Set<SvgNode>();
  readonly noticed = new Noticed();
  problem: Outcome<never> | undefined;
  readonly #tree: SvgTree;
  readonly #owns: Owns;
  readonly #tracer: Tracer;
  readonly #waiting: Task[] = [];
  #visited = 0;
  #signs = 0;

  constructor({ tree, sheet, page, options }: Drawn) {
    this.#tree = tree;
    this.#owns = new Owns(sheet);
    this.#tracer = new Tracer(tracerLimits(options));
    this.#waiting.push({ node: tree.root, state: outermost(page) });
  }

  /** Draws what is left, until something is refused. */
  finish(): void {
    while (this.#step());
  }

  /** The next element; false when there is none, or when something was refused. */
  #step(): boolean {
    const next = this.#waiting.pop();
    if (next === undefined || this.problem !== undefined) return false;
    this.#visited += 1;
    if (this.#visited > readingLimits.parts || this.#signs > readingLimits.dataSigns)
      this.problem = refused('drawing-too-many-parts', { most: readingLimits.parts });
    else if (next.state.depth > readingLimits.depth)
      this.problem = refuseUnreadable('SVG', 'copies within copies without end');
    else this.#visit(next);
    return true;
  }

  #visit(task: Task): void {
    const { node, state } = task;
    if (!passes(node)) return;
    const isShape = shapeNames.has(node.name);
    if (!isShape && !drawn.has(node.name) && !(node.name === 'symbol' && task.copy !== undefined))
      return;
    const own = this.#owns.of(node);
    const inner = within(state, node, own);
    if (own.slip !== undefined && !inner.gone) this.noticed.slip(own.slip);
    if (isShape) this.#shape(node, inner);
    else if (inner.gone) this.#hide(node, inner);
    else this.#open({ ...task, state: inner });
    if (!inner.gone) this.#noticeStyle(own.style);
  }

  #open(task: Task): void {
    const { node, state } = task;
    switch (node.name) {
      case 'text':
        if (!state.invisible) this.#text(node, state);
        break;
      case 'image':
      case 'foreignObject':
        if (!state.invisible) this.noticed.unread.add(node.name);
        break;
      case 'use':
        this.#copy(node, state);
        break;
      case 'switch':
        this.#push(this.#firstThatPasses(node.children), state);
        break;
      case 'svg':
      case 'symbol':
        this.#push(node.children, state.depth === 1 ? state : framed(node, state, task.copy));
        break;
      default:
        if (node.name === 'g') this.groups.add(node);
        this.#push(node.children, state);
    }
  }

  #push(nodes: readonly SvgNode[], state: SvgState): void {
    for (const node of nodes.toReversed()) this.#waiting.push({ node, state });
  }

  /** Looking counts as visiting, so that copies of a long switch cost no more than others. */
  #firstThatPasses(nodes: readonly SvgNode[]): readonly SvgNode[] {
    const first = nodes.findIndex(passes);
    this.#visited += first < 0 ? nodes.length : first;
    return nodes.slice(Math.max(0, first), first + 1);
  }

  /** A hidden element still counts for what would be in it. */
  #hide(node: SvgNode, state: SvgState): void {
    if (node.name === 'use') this.noticed.hidden(state.layer.layer ?? '');
    else if (node.name !== 'text') this.#push(node.children, state);
  }

  /** What changes how lines look, and is not carried out. */
  #noticeStyle(style: Style): void {
    for (const property of ['clip-path', 'mask', 'stroke-dasharray'] as const) {
      const said = style[property];
      if (said !== undefined && said !== 'none' && said !== '0') this.noticed.unread.add(property);
    }
  }

  #shape(node: SvgNode, state: SvgState): void {
    if (state.gone || state.invisible) {
      this.noticed.hidden(state.layer.layer ?? '');
      return;
    }
    const { attributes, name } = node;
    this.#signs += (attributes['d']?.length ?? 0) + (attributes['points']?.length ?? 0);
    this.#tracer.under(state.matrix);
    const slip = drawShape(name, attributes, { ...state.view, em: state.em }, this.#tracer);
    if (slip !== undefined) this.noticed.slip(`${name} ${attributes['id'] ?? `at ${slip}`}`.trim());
    const lines = this.#tracer.taken();
    if (this.#tracer.stopped !== undefined) {
      this.problem = refuseStopped(this.#tracer.stopped, this.lines.length + lines.length + 1);
      return;
    }
    if (lines.length === 0) return;
    if (isUnseen(state)) this.noticed.unseen(lines.length, this.lines.length + 1);
    const cell = /^cell-([A-Z]{1,2}\d{1,3})$/.exec(attributes['id'] ?? '')?.[1];
    const colour = colourOf(state);
    const about = {
      passes: 1,
      ...state.layer,
      ...(cell === undefined ? {} : { cell: { id: cell } }),
      ...(colour === undefined ? {} : { colour }),
      ...(isStrokeless(state) ? { isStrokeless: true as const } : {}),
    };
    for (const points of lines) this.lines.push({ points, ...about, where: this.lines.length + 1 });
  }

  #text(node: SvgNode, state: SvgState): void {
    const { words } = this.#owns.of(node);
    if (words === '') return;
    const said = (key: string): number =>
      svgLength(node.attributes[key] ?? node.children[0]?.attributes[key], 0, state.em) ?? 0;
    this.noticed.text(words, mapped(state.matrix, [said('x'), said('y')]));
  }

  /** `use`: what it names stands here once more (SVG 2, 5.6). */
  #copy(node: SvgNode, state: SvgState): void {
    const { attributes, href = '' } = node;
    const target = href.startsWith('#') ? this.#tree.byId.get(href.slice(1)) : undefined;
    if (target === undefined) {
      this.noticed.unread.add(`use ${href.slice(0, 40)}`.trim());
      return;
    }
    for (let at = state.copying; at !== undefined; at = at.outer) {
      if (at.target !== target) continue;
      this.problem = refused('drawing-copies-itself', { name: href.slice(0, 40) });
      return;
    }
    const { width, height } = state.view;
    const to: Point = [
      svgLength(attributes['x'], width, state.em) ?? 0,
      svgLength(attributes['y'], height, state.em) ?? 0,
    ];
    this.#waiting.push({
      node: target,
      state: {
        ...state,
        matrix: times(state.matrix, shift(to)),
        copying: { target, outer: state.copying },
      },
      copy: { width: attributes['width'], height: attributes['height'] },
    });
  }
}

/** Elements beside shapes that are painted, or hold what is. */
const drawn: ReadonlySet<string> = new Set([
  'svg',
  'g',
  'a',
  'switch',
  'use',
  'text',
  'image',
  'foreignObject',
]);
