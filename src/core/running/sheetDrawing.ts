import type { CardDrawing, DrawnLayer } from '../card/cardDrawing.ts';
import type { DrawnPart } from '../card/cardParts.ts';
import { drawingOnPage } from '../card/drawingOnPage.ts';
import { rungColours } from '../card/rungColours.ts';
import { rungLetter } from '../card/rungLetter.ts';
import { layerName } from '../card/settingWords.ts';
import type { PathLine } from '../filecheck/toolpath.ts';
import type { Setting } from '../machine/setting.ts';
import type { DrawingInParts, Part } from '../proof/partsOf.ts';
import { partsApart } from '../proof/spreadParts.ts';

/** The lines of a drawing of one sheet, and what it is to be cut with. */
export interface SheetToDraw {
  readonly lines: readonly PathLine[];
  readonly inParts: DrawingInParts;
  readonly page?: { readonly widthMm: number; readonly heightMm: number };
  /** The main one first; of each other so many parts. */
  readonly settings: readonly { readonly setting: Setting; readonly parts: number }[];
  /** What a line that frees nothing says of its own setting, in a program. */
  readonly settingOf: (line: PathLine) => Setting | undefined;
}

export interface SheetDrawn {
  readonly drawing: CardDrawing;
  /** Which parts, by their place in the drawing, are cut at each other setting. */
  readonly others: readonly (readonly number[])[];
}

/**
 * The user's own drawing again: what frees nothing stays first and as it is; the parts stand on a layer for each setting, those
 * of another setting apart from one another and never beside a part that lies within another. Inner outlines come first: what
 * lies within another part, then each part's holes, then its outline. Nothing is moved. O(points · settings).
 */
export const sheetDrawing = ({
  lines,
  inParts,
  page,
  settings,
  settingOf,
}: SheetToDraw): SheetDrawn => {
  const { parts, outlines } = inParts;
  const depthOf = ({ outlines: [outer] }: Part): number =>
    outer === undefined ? 0 : (outlines[outer]?.nested.depth ?? NaN);
  const apart = partsApart(inParts);
  let taken = 0;
  const others = settings.slice(1).map(({ parts: some }) => {
    const own = apart.slice(taken, taken + some);
    taken += some;
    return own;
  });
  const isOther = new Set(others.flat());
  const main = parts.map((_, i) => i).filter((i) => !isOther.has(i));
  const drawn = (places: readonly number[]): readonly DrawnPart[] =>
    places
      .flatMap((i) => parts[i] ?? [])
      .toSorted((a, b) => depthOf(b) - depthOf(a))
      .map((part) => ({ of: { what: 'whole' }, polylines: innerFirst(inParts, part) }));
  const colours = rungColours(settings.length + 1);
  const layers = settings.map(({ setting }, k): DrawnLayer => {
    const own = drawn(k === 0 ? main : (others[k - 1] ?? []));
    return layerOf(rungLetter(k), setting, colours[k] ?? '#000000', own);
  });
  const rest = restOf({ lines, inParts, settingOf }, colours.at(-1) ?? '#000000');
  const all = [...rest, ...layers].filter(({ polylines }) => polylines.length > 0);
  return { drawing: drawingOnPage(all, page), others };
};

/** Holes before the outline around them. */
const innerFirst = ({ outlines }: DrawingInParts, { outlines: own }: Part) =>
  own.toReversed().flatMap((i) => {
    const points = outlines[i]?.points;
    return points === undefined ? [] : [points];
  });

const layerOf = (
  letter: string,
  setting: Setting,
  colour: string,
  parts: readonly DrawnPart[],
): DrawnLayer => ({
  kind: 'rung',
  rung: letter,
  setting,
  name: layerName(letter, setting),
  colour,
  parts,
  polylines: parts.flatMap(({ polylines }) => polylines),
});

/** What frees nothing, together by the setting that it says, where it says one. */
const restOf = (
  { lines, inParts, settingOf }: Pick<SheetToDraw, 'lines' | 'inParts' | 'settingOf'>,
  colour: string,
): readonly DrawnLayer[] => {
  const groups = new Map<string, { setting: Setting | undefined; parts: DrawnPart[] }>();
  for (const { lines: members, points } of inParts.open) {
    const line = lines[members[0] ?? -1];
    const setting = line === undefined ? undefined : settingOf(line);
    const name = setting === undefined ? 'rest' : layerName('rest', setting);
    const group = groups.get(name) ?? { setting, parts: [] };
    group.parts.push({ of: { what: 'whole' }, polylines: [points] });
    groups.set(name, group);
  }
  return [...groups].map(([name, { setting, parts }]) => ({
    kind: 'marks',
    name,
    colour,
    ...(setting === undefined ? {} : { setting }),
    parts,
    polylines: parts.flatMap(({ polylines }) => polylines),
  }));
};
