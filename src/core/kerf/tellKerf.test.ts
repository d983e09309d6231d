import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { parseKerfFile } from '../../formats/kerfFile.ts';
import { tellKerf, type KerfResult } from './tellKerf.ts';

const shown = async (): Promise<object> => {
  const page = await readFile(new URL('../../../docs/formats/kerf.md', import.meta.url), 'utf8');
  const json: unknown = JSON.parse(/```json\n([\s\S]*?)```/.exec(page)?.[1] ?? '');
  if (typeof json !== 'object' || json === null) throw new Error('the page shows no file');
  return json;
};

const told = (json: unknown): KerfResult => {
  const file = parseKerfFile(json);
  if (!file.ok) throw new Error(`${file.problem.code} ${JSON.stringify(file.problem.params)}`);
  const outcome = tellKerf(file.value);
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value;
};
const refusal = (json: unknown): string => {
  const file = parseKerfFile(json);
  const outcome = file.ok ? tellKerf(file.value) : file;
  return outcome.ok ? 'accepted' : outcome.problem.code;
};

describe('kerf and joints from a file', () => {
  it('are told as the page of the format shows it', async () => {
    const { kerf, growMm, joints, remarks } = told(await shown());
    // (99.80 − 98.01)/9, (99.80 − 98.05)/9, (99.79 − 97.95)/9, (99.80 − 98.01)/9, and half of 9 gaps of 0.01 over 9 kerfs
    expect(kerf?.kerfMm).toBeCloseTo((1.79333 + 1.75 + 1.84333 + 1.79) / 36 + 0.005, 4);
    expect(growMm).toBeCloseTo((kerf?.kerfMm ?? NaN) / 2, 12);
    expect(kerf?.byDirection.map(({ direction }) => direction)).toEqual(['across', 'up']);
    expect(joints?.map(({ kind }) => kind)).toEqual(['press', 'snug', 'slip']);
    expect(remarks).toEqual([]);
  });

  it('are told each by itself', () => {
    const comb = { direction: 'up', strips: 5, nominalMm: 50, measuredMm: [49.2] };
    const alone = told({ version: 1, combs: [comb] });
    expect(alone.joints).toBeUndefined();
    expect(alone.remarks.map(({ code }) => code)).toEqual(['kerf-one-place', 'kerf-without-bar']);
    const slots = [
      { drawnMm: 2.9, fit: 'press' },
      { drawnMm: 3, fit: 'loose' },
    ];
    const joints = told({ version: 1, tongueMm: 3, slots });
    expect(joints.kerf).toBeUndefined();
    expect(joints.joints?.map(({ clearanceMm }) => clearanceMm)).toEqual(
      joints.joints?.map(() => undefined),
    );
  });

  it('refuse what cannot be told', () => {
    expect(refusal({ version: 1 })).toBe('kerf-no-comb');
    expect(refusal({ version: 1, slots: [] })).toBe('file-value-missing');
    expect(refusal({ version: 1, combs: [{ direction: 'up', strips: 1 }] })).toMatch(/^file-value/);
  });
});
