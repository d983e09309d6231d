import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../test/plainStudy.ts';
import { proveOnDrawing } from './proveOnDrawing.ts';

/** Drawings as they come out of a paste gone wrong or a hostile hand. */
const svg = (body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="400mm" viewBox="0 0 400 400"><g fill="none" stroke="black">${body}</g></svg>`;
const many = (count: number, one: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => one(i)).join('');

const setting = { powerPct: 34, speedMmPerS: 12, passes: 1 };
const proven = (text: string) => {
  const began = performance.now();
  const proof = proveOnDrawing({ text, study: plainStudy(), setting });
  // Other tests run beside this one: the bound of 20 s is measured by the night on a machine of its own.
  expect(performance.now() - began).toBeLessThan(50_000);
  return proof;
};
const codesOf = (proof: ReturnType<typeof proven>): readonly string[] =>
  proof.ok ? proof.value.remarks.map(({ code }) => code) : [proof.problem.code];

describe('a proof has its bounds', () => {
  it('counts twenty thousand lines in one place as cut again', () => {
    const proof = proven(svg(many(20_000, () => '<path d="M10 10 L200 10"/>')));
    const twice = proof.ok && proof.value.remarks.find(({ code }) => code === 'proof-cut-twice');
    expect(twice).toMatchObject({ params: { lengthMm: 190 * 19_999 } });
  });

  it('looks at a nest of circles as far as it can, and says so', () => {
    const circle = (i: number): string =>
      `<circle cx="200" cy="200" r="${(0.06 * (i + 1)).toFixed(2)}"/>`;
    const proof = proven(svg(many(3000, circle)));
    expect(codesOf(proof)).toContain('proof-too-many-to-compare');
    expect(proof.ok && proof.value.drawing.parts).toBe(1500);
  });

  it('refuses in words what is more than a drawing', () => {
    const layers = many(
      60_000,
      (i) => `0\nLINE\n8\nL${String(i)}\n10\n${String(i)}\n20\n0\n11\n${String(i)}\n21\n5\n`,
    );
    expect(codesOf(proven(`0\nSECTION\n2\nENTITIES\n${layers}0\nENDSEC\n0\nEOF\n`))).toEqual([
      'proof-too-much-to-plan',
    ]);
  });
});
