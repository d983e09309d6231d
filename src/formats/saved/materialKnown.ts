import { z } from 'zod';

/** A person has looked at what a sheet is, where its name leaves that open. `false` says no more than nothing. */
export const materialKnownShape = z.literal(true);

/** The same beside the rest of a file or a request, for the whole of it. */
export const materialKnownInFile = z.boolean().exactOptional();

/** What a file says of itself, told to a stock in it. */
export const knownBy =
  (materialKnown: boolean | undefined) =>
  <S extends object>(stock: S): S & { readonly materialKnown?: true } =>
    materialKnown === true ? { ...stock, materialKnown } : stock;
