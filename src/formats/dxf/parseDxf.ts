import * as library from 'dxf-parser';
import { z } from 'zod';

type Constructor = typeof library.DxfParser;

/** What the library finds, as far as it can be relied on: any part may be missing. */
const dxfFile = z.looseObject({
  header: z.record(z.string(), z.unknown()).optional(),
  tables: z
    .looseObject({
      layer: z
        .looseObject({
          layers: z.record(z.string(), z.looseObject({ colorIndex: z.number().optional() })),
        })
        .optional(),
    })
    .optional(),
  entities: z.array(z.looseObject({ type: z.string() })).default([]),
});
export type ParsedDxf = z.infer<typeof dxfFile>;

/** Node finds the parser as the default export, bundlers as a named one, whatever the types say. */
const isConstructor = (found: unknown): found is Constructor => typeof found === 'function';

/** The text of a DXF file as the library reads it. Throws on what is no DXF. */
export const parseDxf = (text: string): ParsedDxf => {
  const Parser = [library.DxfParser, library.default].find(isConstructor);
  if (Parser === undefined) throw new Error('dxf-parser has neither a named nor a default export');
  return dxfFile.parse(new Parser().parseSync(text));
};
