import { describe, expect, it } from 'vitest';
import { tenthOf } from '../../../test/everyCase.ts';
import { seededRandom } from '../../num/seededRandom.ts';
import { accusedFrom, bedReport, type BedVerdict } from './bedVerdict.ts';
import { forEachPlace, type BedPlace } from './place.ts';
import { scatterUnstudied, type GradeCounts, type GradesByPlace } from './placeEffects.ts';

const { sigma, hangBand } = scatterUnstudied;

const counts = (out: number, hangs: number, stays: number): GradeCounts => ({ out, hangs, stays });

/** A bed cut at a setting that was to let two thirds out and lies up to 4 % beside it; `lost`: ln of what a place loses. */
const cutBed = (
  seed: number,
  cells: number,
  lost: Partial<Record<BedPlace, number>>,
): GradesByPlace => {
  const random = seededRandom(seed);
  const beside = 0.08 * (random.uniform() - 0.5);
  return forEachPlace((place) => {
    const tally = { out: 0, hangs: 0, stays: 0 };
    for (let i = 0; i < cells; i += 1) {
      const margin = (0.43 + random.normal()) * sigma + beside + (lost[place] ?? 0);
      tally[margin > 0 ? 'out' : margin > -hangBand ? 'hangs' : 'stays'] += 1;
    }
    return tally;
  });
};

const verdicts = (
  beds: number,
  cells: number,
  lost: Partial<Record<BedPlace, number>> = {},
): readonly BedVerdict[] =>
  Array.from({ length: tenthOf(beds) }, (_, i) => bedReport(cutBed(i + 1, cells, lost)).verdict);

const share = (all: readonly BedVerdict[], fits: (verdict: BedVerdict) => boolean): number =>
  all.filter(fits).length / all.length;

const isAccused = ({ kind }: BedVerdict): boolean => kind === 'place' || kind === 'side';

describe('over simulated beds', () => {
  it('accuses fewer than 1 in 20 even beds, with four cells at each place', () => {
    // Counted when this was written: 15 of 500, 7 of them as a place and 8 as a side.
    const even = verdicts(1000, 4);
    expect(share(even, isAccused)).toBeLessThan(1 / 20);
  }, 60_000);

  it('calls most even beds even with twelve cells at each place, and hardly accuses one', () => {
    const even = verdicts(600, 12);
    expect(share(even, ({ kind }) => kind === 'even')).toBeGreaterThan(0.7);
    expect(share(even, isAccused)).toBeLessThan(0.06);
  }, 60_000);

  it('finds a corner that is 15 % slower: often with four cells at each place, nearly always with eight', () => {
    const lost = { 'back-left': Math.log(0.85) } as const;
    const found = (verdict: BedVerdict): boolean =>
      verdict.kind === 'place' && verdict.place === 'back-left';
    expect(share(verdicts(600, 4, lost), found)).toBeGreaterThan(0.4);
    const withEight = verdicts(600, 8, lost);
    expect(share(withEight, found)).toBeGreaterThan(0.75);
    expect(share(withEight, ({ kind }) => kind === 'even')).toBeLessThan(0.05);
  }, 60_000);

  it('finds a bed tilted by 15 % from left to right as a side', () => {
    const tilted = { 'front-right': Math.log(0.85), 'back-right': Math.log(0.85) } as const;
    const found = verdicts(600, 8, tilted);
    expect(
      share(found, (verdict) => verdict.kind === 'side' && verdict.side === 'right'),
    ).toBeGreaterThan(0.8);
  }, 60_000);

  it('tells with as many cells more as it said, for most even beds that were untold', () => {
    const untold = Array.from({ length: 60 }, (_, i) => i + 1).flatMap((seed) => {
      const { verdict } = bedReport(cutBed(seed, 4, {}));
      return verdict.kind === 'untold' ? [{ seed, more: verdict.cellsMoreEach }] : [];
    });
    expect(untold.length).toBeGreaterThan(20);
    const told = untold.filter(
      ({ seed, more }) => bedReport(cutBed(seed + 1000, 4 + more, {})).verdict.kind !== 'untold',
    );
    expect(told.length / untold.length).toBeGreaterThan(0.55);
  }, 60_000);
});

describe('what the report says', () => {
  it('names a place with its suspects, and gives the exact test beside it', () => {
    const report = bedReport({
      ...forEachPlace(() => counts(7, 1, 0)),
      'back-right': counts(0, 1, 7),
    });
    expect(report.verdict).toMatchObject({ kind: 'place', place: 'back-right' });
    expect(report.verdict.kind === 'place' && report.verdict.sure).toBeGreaterThan(accusedFrom);
    expect(report.suspects).toContain('mirrors');
    expect(report.exact['back-right'].pOfFour).toBeLessThan(0.001);
    expect(report.exact['front-left'].p).toBeGreaterThan(0.9);
  });

  it('tests a place against the rest as Fisher did', () => {
    // Fisher 1935, the lady tasting tea: 3 of 4 against 1 of 4 gives 17/70 one-sided.
    const { exact } = bedReport({
      'front-left': counts(1, 3, 0),
      'front-right': counts(2, 0, 0),
      'back-left': counts(1, 0, 0),
      'back-right': counts(0, 0, 1),
    });
    expect(exact['front-left'].p).toBeCloseTo(17 / 70, 12);
    expect(exact['front-left'].pOfFour).toBeCloseTo(68 / 70, 12);
  });

  it('says that a card on which all or nothing came out was cut too far from the changeover', () => {
    expect(bedReport(forEachPlace(() => counts(6, 0, 0))).verdict).toMatchObject({
      kind: 'untold',
      because: 'all-out',
    });
    expect(bedReport(forEachPlace(() => counts(0, 0, 6))).verdict).toMatchObject({
      kind: 'untold',
      because: 'none-out',
    });
  });

  it('says nothing before every place is read', () => {
    const report = bedReport({
      ...forEachPlace(() => counts(3, 1, 0)),
      'back-left': counts(0, 0, 0),
    });
    expect(report.verdict).toMatchObject({ kind: 'untold', because: 'place-unread' });
    expect(report.suspects).toEqual([]);
  });
});
