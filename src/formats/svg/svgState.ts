import { shift, times, unchanged, type Matrix } from '../../core/path/matrix.ts';
import type { Point } from '../../core/path/point.ts';
import { colourKey } from './svgColour.ts';
import { emPx, svgLength } from './svgLength.ts';
import type { SvgNode } from './svgTree.ts';
import type { Own } from './svgOwn.ts';

/** The elements that are being copied, the innermost first. */
export interface Copying {
  readonly target: SvgNode;
  readonly outer: Copying | undefined;
}

/** What an element hands down to what is in it. */
export interface SvgState {
  /** From its units to mm. */
  readonly matrix: Matrix;
  /** What percentages are of. */
  readonly view: { readonly width: number; readonly height: number };
  /** Size of letters, in user units: what `em` is of. */
  readonly em: number;
  readonly depth: number;
  /** What the groups around stand for. */
  readonly layer: Own['layer'];
  /** None of these may be copied again within itself. */
  readonly copying: Copying | undefined;
  /** Not shown, whatever stands within it. */
  readonly gone: boolean;
  /** Not shown, but what stands within it may be. */
  readonly invisible: boolean;
  /** Shown so faintly that it cannot be seen. */
  readonly faint: boolean;
  readonly stroke: string | undefined;
  readonly fill: string | undefined;
  readonly current: string | undefined;
  readonly strokeGone: boolean;
  readonly fillGone: boolean;
}

export const outermost = (page: Pick<SvgState, 'matrix' | 'view'>): SvgState => ({
  ...page,
  em: emPx,
  depth: 0,
  layer: {},
  copying: undefined,
  gone: false,
  invisible: false,
  faint: false,
  stroke: undefined,
  fill: undefined,
  current: undefined,
  strokeGone: false,
  fillGone: false,
});

/** What holds within an element, from what holds around it and what it says itself. */
export const within = (outer: SvgState, node: SvgNode, own: Own): SvgState => {
  if (own.plain) return { ...outer, depth: outer.depth + 1 };
  const { style, matrix, layer } = own;
  const em = svgLength(style['font-size'], outer.em, outer.em) ?? outer.em;
  return {
    ...outer,
    em,
    matrix:
      matrix === unchanged
        ? outer.matrix
        : times(
            outer.matrix,
            aboutOrigin(matrix, style['transform-origin'], { ...outer.view, em }),
          ),
    depth: outer.depth + 1,
    layer: node.name === 'g' ? nearerLayer(layer, outer.layer) : outer.layer,
    gone: outer.gone || style.display === 'none',
    invisible: invisibleBy(style.visibility, outer.invisible),
    faint: outer.faint || isZero(style.opacity),
    stroke: inherited(style.stroke, outer.stroke),
    fill: inherited(style.fill, outer.fill),
    current: inherited(style.color, outer.current),
    strokeGone: goneBy(outer.strokeGone, style['stroke-opacity'], style['stroke-width']),
    fillGone: goneBy(outer.fillGone, style['fill-opacity']),
  };
};

/**
 * A transform about its origin (CSS Transforms 1, 4): two lengths or sides of the view; at zero where none is said, as in
 * SVG it is.
 */
const aboutOrigin = (
  matrix: Matrix,
  said: string | undefined,
  { width, height, em }: SvgState['view'] & Pick<SvgState, 'em'>,
): Matrix => {
  const words = (said ?? '').slice(0, 100).trim().split(/\s+/);
  if (words[0] === '' || words[0] === undefined) return matrix;
  const isUpDown = (word: string | undefined): boolean => word === 'top' || word === 'bottom';
  const [first, second = isUpDown(words[0]) ? words[0] : 'center'] = words;
  const [across, down] =
    isUpDown(first) || second === 'left' || second === 'right'
      ? [words.length === 1 ? 'center' : second, first]
      : [first, second];
  const at = (word: string, whole: number): number =>
    svgLength(sides[word] ?? word, whole, em) ?? 0;
  const origin: Point = [at(across, width), at(down, height)];
  return times(shift(origin), times(matrix, shift([-origin[0], -origin[1]])));
};

const sides: Readonly<Record<string, string>> = {
  left: '0%',
  top: '0%',
  center: '50%',
  right: '100%',
  bottom: '100%',
};

/** The nearest group whose name spells a setting; else the nearest that has a name. */
const nearerLayer = (near: Own['layer'], far: Own['layer']): Own['layer'] => {
  if (near.spelt !== undefined) return near;
  return near.layer === undefined || far.spelt !== undefined ? far : near;
};

const inherited = (value: string | undefined, around: string | undefined): string | undefined =>
  value === undefined || value === 'inherit' ? around : value;

const invisibleBy = (visibility: string | undefined, around: boolean): boolean => {
  if (visibility === 'hidden' || visibility === 'collapse') return true;
  return visibility === 'visible' ? false : around;
};

/** The last that is said counts, as these are handed down. */
const goneBy = (outer: boolean, ...said: readonly (string | undefined)[]): boolean =>
  said.some((value) => value !== undefined) ? said.some(isZero) : outer;

const isZero = (value: string | undefined): boolean =>
  value !== undefined && value.length < 20 && Number.parseFloat(value) === 0;

/** Neither stroke nor fill, or too faint: what nobody sees in the drawing. Where nothing is said the fill is black. */
export const isUnseen = (state: SvgState): boolean =>
  state.faint ||
  ((isNoPaint(state.stroke ?? 'none') || state.strokeGone) &&
    (isNoPaint(state.fill ?? 'black') || state.fillGone));

/** Painted by its fill alone. */
export const isStrokeless = ({ stroke, strokeGone }: SvgState): boolean =>
  isNoPaint(stroke ?? 'none') || strokeGone;

const isNoPaint = (paint: string): boolean => paint === 'none' || paint === 'transparent';

/** The colour of the stroke, or of the fill where there is none: what control programs go by. */
export const colourOf = ({ stroke, fill, current }: SvgState): string | undefined =>
  colourKey(stroke, current) ?? colourKey(fill ?? 'black', current);
