import { z } from 'zod';
import { howItCame, readingSources, type CellReading } from '../../core/reading/cellEvent.ts';
import { edgesOf } from '../../core/reading/edge.ts';
import { grades, spoiltReasons } from '../../core/reading/grade.ts';
import type { ReadingEvent } from '../../core/reading/readingEvent.ts';
import type { Columns } from '../csv.ts';
import { authorShape, code, id, isoTime } from './bounds.ts';
import { settingShape } from './setting.ts';

export const gradeShape = z.enum(grades);
export const spoiltShape = z.enum(spoiltReasons);

export const edgeShape = z.enum([...edgesOf.wood, ...edgesOf.acrylic]);
export const tapedShape = z.literal(true);

type Kind = ReadingEvent['kind'];
type Carried<K extends Kind> = Omit<
  Extract<ReadingEvent, { readonly kind: K }>,
  'id' | 'cardCode' | 'at' | 'by' | 'kind'
>;

/** What an event of a kind carries, and what stands of it in the table of cells. */
interface EventFormat<K extends Kind> {
  readonly fields: {
    readonly [F in keyof Carried<K>]-?: Partial<Carried<K>> extends Pick<Carried<K>, F>
      ? z.ZodExactOptional<z.ZodType<Carried<K>[F]>>
      : z.ZodType<Carried<K>[F]>;
  };
  readonly columns?: Columns<CellReading>;
}

const cell = z.string().min(1).max(8);
const graded = (reading: CellReading) => (reading.kind === 'graded' ? reading : undefined);
const edgeIn = (reading: CellReading) => graded(reading)?.edge;

/** Every kind of event: its saved shape, its description, the check of the store, import, export and table follow from here. */
const kinds = {
  graded: {
    fields: {
      cell,
      grade: gradeShape,
      how: z.enum(howItCame).exactOptional(),
      source: z.enum(readingSources).exactOptional(),
    },
    columns: {
      grade: (reading) => graded(reading)?.grade,
      how: (reading) => graded(reading)?.how,
      read_from: (reading) => graded(reading)?.source,
    },
  },
  edge: {
    fields: { cell, edge: edgeShape.nullable(), taped: tapedShape.exactOptional() },
    columns: {
      edge: (reading) => edgeIn(reading)?.edge,
      taped: (reading) => edgeIn(reading) && (edgeIn(reading)?.taped === true ? 'yes' : 'no'),
    },
  },
  spoilt: {
    fields: { cell, reason: spoiltShape },
    columns: { spoilt: (reading) => (reading.kind === 'spoilt' ? reading.reason : undefined) },
  },
  cleared: { fields: { cell } },
  'as-cut': { fields: { cell, setting: settingShape } },
  undone: { fields: { eventId: id } },
} satisfies { readonly [K in Kind]: EventFormat<K> };

const shapes = Object.entries(kinds).map(([kind, { fields }]) =>
  z.strictObject({
    ...{ id, cardCode: code, at: isoTime, ...authorShape },
    kind: z.literal(kind),
    ...fields,
  }),
);

/** A reading event as saved and sent. What the compiler loses in the loop, `EventFormat` has held to the event's own type. */
export const readingEventShape = z.discriminatedUnion(
  'kind',
  shapes as [(typeof shapes)[number], ...typeof shapes],
) as unknown as z.ZodType<ReadingEvent, ReadingEvent>;

/** The columns of the table of cells that say how a cell was read. */
export const readingColumns: Columns<CellReading> = Object.fromEntries(
  Object.values(kinds).flatMap((kind) => ('columns' in kind ? Object.entries(kind.columns) : [])),
);
