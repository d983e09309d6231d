import { drawingOnPage } from '../card/drawingOnPage.ts';
import type { CardDrawing, DrawnLayer } from '../card/cardDrawing.ts';
import type { DrawnPart } from '../card/cardParts.ts';
import type { PathLine } from '../filecheck/toolpath.ts';
import type { Polyline } from '../path/polyline.ts';
import type { LinesInParts } from '../proof/linesInParts.ts';
import { problemOf, type Problem } from '../problem.ts';
import { grownParts, type LostDetail } from './grownParts.ts';

/** The user's own drawing with its lines moved off its parts. */
export interface GrownDrawing {
  readonly drawing: CardDrawing;
  readonly parts: number;
  /** Lines that free nothing: they stay where they are. */
  readonly rest: number;
  readonly lost: readonly LostDetail[];
  readonly remarks: readonly Problem[];
}

/** Characters that a layer's name may not hold in every drawing format. */
const notInNames = /[<>/\\":;?*|=,`']/g;

/**
 * A drawing with outlines outward and holes inward by so much, on the layers and in the colours that its lines had. What
 * frees nothing comes first and stays as it is; then what lies innermost, holes before the outline around them.
 */
export const grownDrawing = (
  { lines, inParts }: LinesInParts,
  {
    byMm,
    page,
  }: {
    readonly byMm: number;
    readonly page?: { readonly widthMm: number; readonly heightMm: number };
  },
): GrownDrawing => {
  const { parts, meet } = grownParts(inParts, byMm);
  const depthOf = (outline: number): number => inParts.outlines[outline]?.nested.depth ?? NaN;
  const moved = parts
    .toSorted(
      (a, b) => depthOf(b.lines.at(-1)?.outline ?? 0) - depthOf(a.lines.at(-1)?.outline ?? 0),
    )
    .flatMap((part) => part.lines)
    .map(({ outline, points }) => ({ of: inParts.outlines[outline]?.lines[0], points }));
  const rest = inParts.open.map(({ lines: [of], points }) => ({ of, points }));
  const lost = parts.flatMap((part) => part.lost);
  return {
    drawing: drawingOnPage(layersOf(lines, [...rest, ...moved]), page),
    parts: parts.length,
    rest: rest.length,
    lost,
    remarks: [
      ...lostRemark(
        'grow-hole-lost',
        lost.filter(({ what }) => what === 'hole'),
      ),
      ...lostRemark(
        'grow-gap-lost',
        lost.filter(({ what }) => what === 'gap'),
      ),
      ...(meet ? [problemOf('grow-parts-meet')] : []),
      ...(rest.length > 0 ? [problemOf('grow-lines-stay', { count: rest.length })] : []),
    ],
  };
};

/** How many, and where the first of them is. */
const lostRemark = (
  code: 'grow-hole-lost' | 'grow-gap-lost',
  [first, ...more]: readonly LostDetail[],
): readonly Problem[] =>
  first === undefined
    ? []
    : [
        problemOf(code, {
          count: 1 + more.length,
          xMm: Number(first.at[0].toFixed(2)),
          yMm: Number(first.at[1].toFixed(2)),
        }),
      ];

const layersOf = (
  lines: readonly PathLine[],
  drawn: readonly { readonly of: number | undefined; readonly points: Polyline }[],
): readonly DrawnLayer[] => {
  const layers = new Map<string, { name: string; colour: string; parts: DrawnPart[] }>();
  for (const { of, points } of drawn) {
    const line = of === undefined ? undefined : lines[of];
    const colour = line?.colour ?? '#000000';
    const name = (line?.layer ?? `lines ${colour.slice(1)}`).replace(notInNames, '_');
    const layer = layers.get(`${name} ${colour}`) ?? { name, colour, parts: [] };
    layer.parts.push({ of: { what: 'whole' }, polylines: [points] });
    layers.set(`${name} ${colour}`, layer);
  }
  return [...layers.values()].map((layer) => ({
    kind: 'marks',
    ...layer,
    polylines: layer.parts.flatMap(({ polylines }) => polylines),
  }));
};
