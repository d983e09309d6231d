import { describe, expect, it } from 'vitest';
import { layerEach, nestOfCircles, sameLine } from '../../../bench/hostile/hostileFiles.ts';
import { plainStudy } from '../../../test/plainStudy.ts';
import { proveOnDrawing } from './proveOnDrawing.ts';

const setting = { powerPct: 34, speedMmPerS: 12, passes: 1 };
/** How long it takes and how much memory is measured at night, by `npm run night -- hostile`. */
const proven = (text: string) => proveOnDrawing({ text, study: plainStudy(), setting });
const codesOf = (proof: ReturnType<typeof proven>): readonly string[] =>
  proof.ok ? proof.value.remarks.map(({ code }) => code) : [proof.problem.code];

describe('a proof has its bounds', () => {
  it('counts twenty thousand lines in one place as cut again', () => {
    const proof = proven(sameLine(20_000));
    const twice = proof.ok && proof.value.remarks.find(({ code }) => code === 'proof-cut-twice');
    expect(twice).toMatchObject({ params: { lengthMm: 80 * 19_999 } });
  });

  it('looks at a nest of circles as far as it can, and says so', () => {
    const proof = proven(nestOfCircles(3000));
    expect(codesOf(proof)).toContain('proof-too-many-to-compare');
    expect(proof.ok && proof.value.drawing.parts).toBe(1500);
  });

  it('refuses in words what is more than a drawing', () => {
    expect(codesOf(proven(layerEach(60_000)))).toEqual(['proof-too-much-to-plan']);
  });
});
