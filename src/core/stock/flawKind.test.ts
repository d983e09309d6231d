import { expect, it } from 'vitest';
import { flawKindOf } from './flawKind.ts';

// Common practice, no source: plywood is glued in layers and has both; boards have knots; cast sheets have neither.
it.each([
  ['birch plywood', 'pocket-or-knot'],
  ['pine', 'knot'],
  ['oak', 'knot'],
  ['cast acrylic', 'flaw'],
  ['mdf', 'flaw'],
  ['something of our own', 'flaw'],
])('names what is wrong with a sheet of %s as %s', (material, kind) => {
  expect(flawKindOf(material)).toBe(kind);
});
