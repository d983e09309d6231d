import { describe, expect, it } from 'vitest';
import { aCard, aStudy } from '../../../test/builders.ts';
import { fourOldBoards } from '../../../test/samples/earlier.ts';
import type { ProvenSetting } from '../book/provenSetting.ts';
import { fit, type Fit } from '../cutmodel/fit.ts';
import type { CutStudy, StudyCell } from '../cutmodel/cutStudy.ts';
import type { Grade } from '../reading/grade.ts';
import { defaultPromise } from '../reading/promise.ts';
import { stripsIn, watchedStrip } from './findStrips.ts';
import { stripSettings } from './stripSettings.ts';
import { stripVerdict } from './stripVerdict.ts';

const proven = { powerPct: 30, speedMmPerS: 14.3, passes: 1 };

const old = fourOldBoards();
const nothingYet: CutStudy = { ...old, cells: [], history: old.cells };
const before = fit(nothingYet);

const strip = (speeds: readonly number[], grades: readonly Grade[]): readonly StudyCell[] =>
  speeds.map((speedMmPerS, i) => ({
    ...proven,
    speedMmPerS,
    sheet: 'strip',
    grade: grades[i] ?? 'stays',
  }));
const read = (cells: readonly StudyCell[]): Fit => fit({ ...nothingYet, cells });
/** As a changeover without scatter would have it: out below, hanging just above, staying beyond. */
const cutAt = (v50: number, speeds = [14.5, 15.5, 16.5, 17.5, 18.5, 19.5]): readonly StudyCell[] =>
  strip(
    speeds,
    speeds.map((v) => (v < v50 ? 'out' : v < 1.06 * v50 ? 'hangs' : 'stays')),
  );

describe('the settings of a check strip', () => {
  it('are the proven one as people type it and faster ones up to the changeover', () => {
    const speeds = stripSettings(before, proven).map(({ speedMmPerS }) => speedMmPerS);
    expect(speeds[0]).toBe(14.5);
    expect(speeds).toHaveLength(6);
    expect([...speeds].sort((a, b) => a - b)).toEqual(speeds);
    expect(speeds.at(-1)).toBeGreaterThan(16.5);
    expect(speeds.at(-1)).toBeLessThan(24);
  });

  it('keep within the machine, and to what is wished', () => {
    const slow = fit({
      ...nothingYet,
      machine: { ...old.machine, speedRangeMmPerS: [1, 16] },
    });
    for (const { speedMmPerS } of stripSettings(slow, proven))
      expect(speedMmPerS).toBeLessThanOrEqual(16);
    expect(stripSettings(before, proven, 4)).toHaveLength(4);
  });
});

describe('the verdict of a check strip', () => {
  it('is nothing while nothing is read', () => {
    expect(stripVerdict(before, proven).kind).toBe('unread');
  });

  it('is as before where the sheet cuts as it did, or all came out', () => {
    expect(stripVerdict(read(cutAt(17)), proven).kind).toBe('as-before');
    expect(stripVerdict(read(cutAt(30)), proven)).toMatchObject({
      kind: 'as-before',
      allOut: true,
    });
  });

  it('is slower where half of it hangs, and never at the proven speed where that hung', () => {
    const verdict = stripVerdict(read(cutAt(15)), proven);
    expect(verdict).toMatchObject({ kind: 'retune', which: 'slower' });
    const hung = stripVerdict(
      read(strip([14.5, 15.5, 16.5, 17.5, 18.5], ['hangs', 'out', 'out', 'hangs', 'stays'])),
      proven,
    );
    expect(hung.kind).not.toBe('as-before');
  });

  it('is a card where nothing came out', () => {
    expect(stripVerdict(read(cutAt(10)), proven).kind).toBe('cut-a-card');
  });

  it('is faster where more came out, and never beyond what came out', () => {
    const verdict = stripVerdict(read(cutAt(20, [14.5, 16.5, 18, 19.5, 21, 22.5])), {
      ...proven,
      speedMmPerS: 12.5,
    });
    expect(verdict).toMatchObject({ kind: 'retune', which: 'faster' });
    if (verdict.kind === 'retune') expect(verdict.setting.speedMmPerS).toBeLessThanOrEqual(19.5);
  });
});

const entry: ProvenSetting = {
  version: 1,
  id: 'p1',
  code: 'X3MQ',
  isExample: false,
  keptAt: '2031-05-06T07:08:09.000Z',
  setting: proven,
  aim: 'fastest',
  promise: defaultPromise,
  outOf100Mean: 98,
  surePct: 95,
  holdsFor: { material: 'plywood', nominalThicknessMm: 3, batch: 'Spring' },
  cameFrom: { studyId: 's', cardCodes: [], cellCount: 0, partsTallied: 0, habit: false },
};

describe('finding the strips of a setting', () => {
  const rungs = [14.5, 15.5, 16.5].map((speedMmPerS, i) => ({
    letter: 'ABC'[i] ?? 'A',
    setting: { powerPct: 30, speedMmPerS, passes: 1 },
  }));
  const card = aCard({ rungs, batch: 'autumn' });
  const graded = {
    id: 'e1',
    cardCode: card.code,
    at: '2031-06-01T10:00:00.000Z',
    kind: 'graded',
    cell: 'A1',
    grade: 'out',
  } as const;

  it('knows one by its settings, and what it was cut in by its batch', () => {
    const [strip, none] = stripsIn(aStudy({ cards: [card], events: [graded] }), entry);
    expect(none).toBeUndefined();
    expect(strip).toMatchObject({ of: 'new-batch', batch: 'autumn', at: graded.at, cellCount: 6 });
    expect(strip?.cells).toHaveLength(1);
    const kept = aStudy({ cards: [aCard({ rungs, batch: 'spring' })] });
    expect(stripsIn(kept, entry)[0]?.of).toBe('reference');
  });

  it('passes over other cards, its own study and the example', () => {
    expect(stripsIn(aStudy({ cards: [aCard()] }), entry)).toEqual([]);
    expect(stripsIn(aStudy({ id: 's', cards: [card] }), entry)).toEqual([]);
    expect(stripsIn(aStudy({ isExample: true, cards: [card] }), entry)).toEqual([]);
  });

  it('puts a read one on the chart', () => {
    const strips = stripsIn(aStudy({ cards: [card], events: [graded] }), entry);
    const [point] = strips.flatMap((strip) => watchedStrip(strip, proven));
    expect(point?.groups).toHaveLength(1);
    expect(point?.groups[0]?.lnFaster).toBeCloseTo(Math.log(14.5 / 14.3), 9);
  });
});
