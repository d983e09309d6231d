import { expect, it } from 'vitest';
import { judgedMaterialWords } from './judgedMaterials.ts';

it('keeps working notes and file names out of what a reader sees', () => {
  const shown = Object.values(judgedMaterialWords).flatMap(({ name, reason, hazards, sources }) => [
    name,
    reason,
    ...hazards,
    ...sources,
  ]);
  const notes = /\bseen\b|unconfirmed|from memory|\.json|\.ts\b|\bUT\b|\bUIC\b|\bUVA\b/;
  expect(shown.filter((line) => notes.test(line))).toEqual([]);
});

it('says who says so, with each reason', () => {
  const silent = Object.values(judgedMaterialWords).filter(
    ({ reason, hazards, sources }) =>
      !/\.$/.test(reason) || hazards.length === 0 || sources.length === 0,
  );
  expect(silent).toEqual([]);
});
