import { parseLayerName } from '../../core/card/settingWords.ts';
import {
  remark,
  type Finding,
  type PathLine,
  type Toolpath,
} from '../../core/filecheck/toolpath.ts';
import { placed } from '../../core/path/polyline.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { readingLimits } from '../readingLimits.ts';
import { dxfEntity, entityPoints } from './dxfEntities.ts';
import { parseDxf, type ParsedDxf } from './parseDxf.ts';
import { refuseDrawing } from '../refuseDrawing.ts';

/** Millimetres in each unit that $INSUNITS can name. */
const unitsMm: Readonly<Record<number, number>> = { 1: 25.4, 2: 304.8, 4: 1, 5: 10, 6: 1000 };

/**
 * A drawing in DXF as lines in mm, in the order of the file. Blocks, splines and text are noticed, not read. Refuses
 * what is no DXF, and absurd numbers. O(points).
 */
export const readDxf = (text: string): Outcome<Toolpath> => {
  let parsed: ParsedDxf;
  try {
    parsed = parseDxf(text);
  } catch (error) {
    const detail = error instanceof Error ? error.message : 'no reason given';
    return refuseDrawing('drawing-unreadable', { kind: 'DXF', detail: detail.slice(0, 200) });
  }
  const units = unitsMm[Number(parsed.header?.['$INSUNITS'] ?? 0)];
  const noticed: Finding[] = units === undefined ? [remark('check-units-assumed')] : [];
  const unread = new Map<string, number>();
  const lines: PathLine[] = [];
  let points = 0;
  for (const [i, raw] of parsed.entities.entries()) {
    const entity = dxfEntity.safeParse(raw);
    if (!entity.success) {
      const what = raw.type;
      unread.set(what, (unread.get(what) ?? 0) + 1);
      continue;
    }
    const drawn = placed(entityPoints(entity.data), [0, 0], units ?? 1);
    points += drawn.length;
    if (points > readingLimits.points) return refuseDrawing('drawing-too-many-points', { points });
    const absurd = drawn.some((at) => !at.every((mm) => Math.abs(mm) <= readingLimits.farthestMm));
    if (absurd) return refuseDrawing('drawing-number-absurd', { where: i + 1 });
    if (drawn.length > 1) lines.push(pathLine(drawn, entity.data, parsed, i + 1));
  }
  for (const [what, count] of unread) noticed.push(remark('check-part-not-read', { what, count }));
  return done({ kind: 'dxf', lines, travels: [], noticed });
};

const pathLine = (
  points: PathLine['points'],
  entity: { readonly layer: string; readonly colorIndex?: number | undefined },
  parsed: ParsedDxf,
  where: number,
): PathLine => {
  const { layer } = entity;
  const spelt = parseLayerName(layer);
  const index = entity.colorIndex ?? parsed.tables?.layer?.layers[layer]?.colorIndex;
  return {
    points,
    passes: 1,
    layer,
    ...(spelt === undefined ? {} : { spelt }),
    ...(index === undefined ? {} : { colour: `colour ${String(index)}` }),
    where,
  };
};
