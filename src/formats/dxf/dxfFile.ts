import { done, refused, type Outcome } from '../../core/problem.ts';
import { readingLimits } from '../readingLimits.ts';
import { refuseUnreadable } from '../refuseDrawing.ts';
import { partOf } from './dxfEntity.ts';
import { DxfGroups, type DxfGroup, type DxfRecord } from './dxfGroups.ts';
import { dxfKey, type DxfBlock, type DxfLayer, type DxfPart } from './dxfPart.ts';
import { splineWork } from './dxfSpline.ts';
import { unescaped } from './dxfText.ts';
import { DxfValues } from './dxfValues.ts';

/** What of a DXF file matters for cutting. */
export interface DxfFile {
  /** The code of the drawing's unit; undefined where none is said. */
  readonly units: number | undefined;
  /** `$MEASUREMENT`: inches or metric, which counts where no unit is named. */
  readonly measurement: 'inches' | 'metric' | undefined;
  readonly layers: ReadonlyMap<string, DxfLayer>;
  readonly blocks: ReadonlyMap<string, DxfBlock>;
  readonly parts: readonly DxfPart[];
}

/** Reckoning that all splines of a drawing may cost: cubics of 185 000 controls, some seconds. */
const mostSplineWork = 5_000_000;

/**
 * The text of a DXF file as layers, blocks and parts. Refuses what is not
 * in lines of code and value, and what ends before its end. O(signs).
 */
export const readDxfFile = (text: string): Outcome<DxfFile> => {
  const groups = new DxfGroups(text);
  const file = new Builder();
  let type: string | undefined;
  let line = 0;
  let held: DxfGroup[] = [];
  for (;;) {
    const group = groups.next();
    if (group === 'slip') return unreadable(`no group code in line ${String(groups.line - 1)}`);
    if (group === undefined) return unreadable('ends before its end');
    if (group.code !== 0) {
      held.push(group);
      continue;
    }
    if (type !== undefined) file.take({ type, line, groups: held });
    if (file.problem !== undefined) return file.problem;
    if (group.value === 'EOF') return file.finished();
    type = group.value;
    line = groups.line - 1;
    held = [];
  }
};

const unreadable = (detail: string): Outcome<never> => refuseUnreadable('DXF', detail);

/** Puts records where they belong. */
class Builder {
  problem: Outcome<never> | undefined;
  readonly #layers = new Map<string, DxfLayer>();
  readonly #blocks = new Map<string, DxfBlock>();
  readonly #parts: DxfPart[] = [];
  #section = '';
  #units: number | undefined;
  #measurement: DxfFile['measurement'];
  #block: DxfBlock | undefined;
  /** A polyline whose vertices are still to come. */
  #polyline: { readonly values: DxfValues; readonly vertices: DxfValues[] } | undefined;
  #count = 0;
  #splineWork = 0;

  take(record: DxfRecord): void {
    const values = new DxfValues(record);
    if (record.type === 'SECTION') {
      this.#section = values.text(2) ?? '';
      if (this.#section === 'HEADER') this.#header(record);
      return;
    }
    const drawn = this.#section === 'ENTITIES' || this.#section === 'BLOCKS';
    if (this.#section === 'TABLES' && record.type === 'LAYER') this.#layer(values);
    if (drawn) this.#entity(values);
  }

  finished(): Outcome<DxfFile> {
    this.#endPolyline();
    return done({
      units: this.#units,
      measurement: this.#measurement,
      layers: this.#layers,
      blocks: this.#blocks,
      parts: this.#parts,
    });
  }

  /** The header is one long record: a name by code 9, then what it is. */
  #header({ groups }: DxfRecord): void {
    const said = (name: string): number | undefined => {
      const at = groups.findIndex(({ code, value }) => code === 9 && value === name);
      const group = at < 0 ? undefined : groups[at + 1];
      return group?.code === 70 ? Number(group.value) : undefined;
    };
    this.#units = said('$INSUNITS');
    const measurement = said('$MEASUREMENT');
    if (measurement !== undefined) this.#measurement = measurement === 0 ? 'inches' : 'metric';
  }

  #layer(values: DxfValues): void {
    const name = unescaped(values.text(2) ?? '');
    const colour = values.number(62, 7);
    this.#layers.set(dxfKey(name), {
      name,
      colour: Math.abs(colour),
      off: colour < 0,
      frozen: (values.number(70, 0) & 1) === 1,
    });
  }

  #entity(values: DxfValues): void {
    if (this.#polyline !== undefined) {
      if (values.type === 'VERTEX') {
        this.#polyline.vertices.push(values);
        return;
      }
      this.#endPolyline();
    }
    switch (values.type) {
      case 'SEQEND':
      case 'ENDSEC':
        break;
      case 'BLOCK':
        this.#begin(values);
        break;
      case 'ENDBLK':
        this.#block = undefined;
        break;
      case 'POLYLINE':
        this.#polyline = { values, vertices: [] };
        break;
      default:
        this.#add(values);
    }
  }

  #begin(values: DxfValues): void {
    const name = unescaped(values.text(2) ?? '');
    const elsewhere = (values.number(70, 0) & 4) !== 0;
    const base = [values.number(10, 0), values.number(20, 0)] as const;
    this.#block = { name, base, elsewhere, parts: [] };
    this.#blocks.set(dxfKey(name), this.#block);
  }

  #endPolyline(): void {
    const polyline = this.#polyline;
    this.#polyline = undefined;
    if (polyline !== undefined) this.#add(polyline.values, polyline.vertices);
  }

  #add(values: DxfValues, vertices: readonly DxfValues[] = []): void {
    this.#count += 1;
    if (values.type === 'SPLINE') this.#splineWork += splineWork(values);
    if (this.#count > readingLimits.parts)
      this.problem ??= refused('drawing-too-many-parts', { most: readingLimits.parts });
    if (this.#splineWork > mostSplineWork)
      this.problem ??= refused('drawing-too-many-points', { points: readingLimits.points });
    if (this.problem !== undefined) return;
    // What a block defines to be filled in is no text of it; what was filled in comes with the insert.
    if (this.#block !== undefined && values.type === 'ATTDEF') return;
    const part = partOf(values, vertices);
    if (part !== undefined) (this.#block?.parts ?? this.#parts).push(part);
  }
}
