import { shift, stretch, times } from '../../core/path/matrix.ts';
import type { Point } from '../../core/path/point.ts';
import { svgLength } from './svgLength.ts';
import type { SvgState } from './svgState.ts';
import type { SvgNode } from './svgTree.ts';
import { fitted, viewBoxOf } from './svgViewBox.ts';

/** The size that a copy asks for, instead of what it copies. */
export interface CopySize {
  readonly width?: string | undefined;
  readonly height?: string | undefined;
}

/** Within a nested drawing or a symbol: its own viewport, and its viewBox fitted into it. */
export const framed = (node: SvgNode, state: SvgState, copy: CopySize | undefined): SvgState => {
  const { attributes } = node;
  const { view } = state;
  const frame = {
    width: svgLength(copy?.width ?? attributes['width'], view.width, state.em) ?? view.width,
    height: svgLength(copy?.height ?? attributes['height'], view.height, state.em) ?? view.height,
  };
  const at: Point = [
    svgLength(attributes['x'], view.width, state.em) ?? 0,
    svgLength(attributes['y'], view.height, state.em) ?? 0,
  ];
  const box = viewBoxOf(attributes);
  const inside =
    box === undefined ? stretch(1, 1) : fitted(box, frame, attributes['preserveAspectRatio']);
  return {
    ...state,
    view: box ?? frame,
    matrix: times(state.matrix, times(shift(at), inside)),
  };
};
