import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../num/seededRandom.ts';
import { scorePromises, type PromiseLine } from './scorePromises.ts';
import type { ScoredSheet } from './sheetsToScore.ts';

const sheetOf = (out: number, over: Partial<ScoredSheet> = {}): ScoredSheet => ({
  ...{ material: 'plywood', thicknessMm: 3, machine: 'one' },
  ...{ promisedOutOf100: 97, foretoldOutOf100: 98.5, parts: 30, out },
  ...over,
});

/** Sheets of which so many of 100 parts come out, sheet by sheet at a share of its own. */
const played = (sheets: number, outOf100: number, scatter: number, seed: number) => {
  const random = seededRandom(seed);
  return Array.from({ length: sheets }, () => {
    const share = Math.min(1, outOf100 / 100 + scatter * random.normal());
    let out = 0;
    for (let part = 0; part < 30; part += 1) if (random.uniform() < share) out += 1;
    return sheetOf(out);
  });
};

const lineOf = (sheets: readonly ScoredSheet[]): PromiseLine => {
  const line = scorePromises(sheets).groups[0]?.promises[0];
  if (line === undefined) throw new Error('no line');
  return line;
};

describe('promises held against counts', () => {
  it('gives Clopper and Pearson’s band where parts fail one by one', () => {
    // 285 of 300: [.9189, .9717] by the exact interval (SciPy, beta.ppf(.025, 285, 16) and beta.ppf(.975, 286, 15)).
    const sheets = Array.from({ length: 10 }, (_, i) => sheetOf(i % 2 === 0 ? 28 : 29));
    const { bandOf100, designEffect, outOf100 } = lineOf(sheets);
    expect(designEffect).toBe(1);
    expect(outOf100).toBeCloseTo(95, 9);
    expect(bandOf100[0]).toBeCloseTo(91.89, 1);
    expect(bandOf100[1]).toBeCloseTo(97.17, 1);
  });

  it('widens it where whole sheets are good or bad', () => {
    const apart = Array.from({ length: 10 }, (_, i) => sheetOf(i === 0 ? 15 : 30));
    const alike = Array.from({ length: 10 }, (_, i) => sheetOf(i < 5 ? 28 : 29));
    expect(lineOf(apart).out).toBe(lineOf(alike).out);
    expect(lineOf(apart).designEffect).toBeGreaterThan(5);
    const width = ({ bandOf100: [low, high] }: PromiseLine) => high - low;
    expect(width(lineOf(apart))).toBeGreaterThan(1.8 * width(lineOf(alike)));
  });

  it('calls a promise broken that is, kept one that is, and neither too soon', () => {
    expect(lineOf(played(60, 90, 0, 1)).verdict).toBe('broken');
    expect(lineOf(played(60, 99.5, 0, 2)).verdict).toBe('kept');
    expect(lineOf(played(4, 99, 0, 3)).verdict).toBe('too-few');
    expect(lineOf(played(20, 97.2, 0, 4)).verdict).toBe('fits');
  });

  it('seldom calls a promise broken that is just kept, also where sheets scatter', () => {
    let broken = 0;
    for (let seed = 0; seed < 400; seed += 1)
      if (lineOf(played(20, 97, 0.03, 1000 + seed)).verdict === 'broken') broken += 1;
    // Two-sided 95 %: 2.5 in 100 by rights; the share of each sheet is cut off at 1, which lowers the mean a little.
    expect(broken / 400).toBeLessThan(0.09);
  });

  it('counts the sheets that were worse than luck allows', () => {
    // Of 30 parts at 3 in 100, 3 or more fail in 6 of 100 sheets, 4 or more in fewer than 2.
    const sheets = [30, 30, 29, 27, 26, 20].map((out) => sheetOf(out));
    expect(lineOf(sheets).worseSheets).toBe(2);
  });

  it('parts by material and machine only where there are several, each promise for itself', () => {
    const sheets = [
      ...played(12, 98, 0, 5),
      ...played(12, 98, 0, 6).map((one) => ({ ...one, machine: 'two', promisedOutOf100: 99 })),
    ];
    const { groups, parts } = scorePromises(sheets);
    expect(parts).toBe(720);
    expect(groups.map(({ by, name }) => `${by} ${name}`.trim())).toEqual([
      'all',
      'machine one',
      'machine two',
    ]);
    expect(groups[0]?.promises.map((line) => line.promisedOutOf100)).toEqual([99, 97]);
    expect(scorePromises([])).toEqual({ sheets: 0, parts: 0, groups: [] });
  });

  it('puts sheets of about the same forecast together, and loses none', () => {
    const sheets = [88, 92, 95, 97, 98, 99, 99.8].map((foretoldOutOf100) =>
      sheetOf(29, { foretoldOutOf100 }),
    );
    const bins = scorePromises(sheets).groups[0]?.bins ?? [];
    expect(bins.map((bin) => bin.foretoldOutOf100)).toEqual([88, 92, 95, 97, 98, 99, 99.8]);
    expect(bins.reduce((sum, { parts }) => sum + parts, 0)).toBe(210);
  });
});
