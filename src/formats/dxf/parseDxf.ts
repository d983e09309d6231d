import * as library from 'dxf-parser';

type Constructor = typeof library.DxfParser;
export type ParsedDxf = NonNullable<ReturnType<InstanceType<Constructor>['parseSync']>>;

/** Node finds the parser as the default export, bundlers as a named one, whatever the types say. */
const isConstructor = (found: unknown): found is Constructor => typeof found === 'function';

/** The text of a DXF file as the library reads it; undefined where it finds nothing. Throws on what is no DXF. */
export const parseDxf = (text: string): ParsedDxf | undefined => {
  const Parser = [library.DxfParser, library.default].find(isConstructor);
  if (Parser === undefined) throw new Error('dxf-parser has neither a named nor a default export');
  return new Parser().parseSync(text) ?? undefined;
};
