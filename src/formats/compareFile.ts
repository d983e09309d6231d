import { z } from 'zod';
import {
  differences,
  usualTellPct,
  usualWorthPct,
  type TwoConditions,
} from '../core/compare/twoConditions.ts';
import { done, type Outcome } from '../core/problem.ts';
import { parseWith } from './border.ts';
import { label } from './saved/bounds.ts';
import { knownBy, materialKnownInFile } from './saved/materialKnown.ts';
import { studyFileShape } from './studyFile.ts';

/** Two conditions as a file says them, and what they are called. */
export interface CompareFile {
  readonly two: TwoConditions;
  readonly names: { readonly one?: string; readonly other?: string };
}

const { machine, stock, cells } = studyFileShape.shape;

const sideShape = z.strictObject({ name: label.exactOptional(), cells });

/** A share of speed that somebody may care for: the goal of a test, or the least that is worth having. */
const sharePct = z.number().min(0).max(50);

/** Also the body of `POST /api/calc/compare`. */
export const compareFileShape = z.strictObject({
  version: z.literal(1),
  differs: z.enum(differences).default('other'),
  machine,
  otherMachine: machine.unwrap().exactOptional(),
  stock,
  materialKnown: materialKnownInFile,
  one: sideShape,
  other: sideShape,
  worthPct: sharePct.default(usualWorthPct),
  tellPct: sharePct.min(0.5).default(usualTellPct),
});

/** Reads a file of two conditions (docs/formats/compare.md), strict about keys, types and ranges. */
export const parseCompareFile = (json: unknown): Outcome<CompareFile> => {
  const parsed = parseWith(compareFileShape, json);
  if (!parsed.ok) return parsed;
  const { one, other, differs, machine: firstMachine, otherMachine, ...rest } = parsed.value;
  return done({
    two: {
      differs,
      machine: firstMachine,
      ...(otherMachine === undefined ? {} : { otherMachine }),
      stock: knownBy(rest.materialKnown)(rest.stock),
      one: one.cells,
      other: other.cells,
      worthPct: rest.worthPct,
      tellPct: rest.tellPct,
    },
    names: {
      ...(one.name === undefined ? {} : { one: one.name }),
      ...(other.name === undefined ? {} : { other: other.name }),
    },
  });
};
