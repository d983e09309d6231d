import { describe, expect, it } from 'vitest';
import { bedTestReport } from '../bed/bedTest.ts';
import { whatOrdersSay } from '../standing/ordersSay.ts';
import { fitStudy } from '../cutmodel/fitStudy.ts';
import { compareMeterings } from '../metering/compareMeterings.ts';
import { meterReport } from '../metering/meterReport.ts';
import { readCard } from '../reading/readCard.ts';
import { toCutStudy } from '../study/toCutStudy.ts';
import { exampleWorkshop } from './exampleWorkshop.ts';

const openedAt = '2031-05-06T07:08:09.000Z';
const example = exampleWorkshop(openedAt);

describe('the example workshop', () => {
  it('is the same every time, but for its dates', () => {
    expect(exampleWorkshop(openedAt)).toEqual(example);
    const later = exampleWorkshop('2032-05-06T07:08:09.000Z');
    expect(later.book[0]?.setting).toEqual(example.book[0]?.setting);
    expect(later.book[0]?.keptAt).not.toEqual(example.book[0]?.keptAt);
  });

  it('is marked as an example all over, and is never in the future', () => {
    const { studies, book, meterings, bedTests } = example;
    for (const each of [...studies, ...book, ...meterings, ...bedTests])
      expect(each.isExample).toBe(true);
    const times = [
      ...example.studies.flatMap(({ createdAt, events, tallies }) => [
        createdAt,
        ...events.map(({ at }) => at),
        ...tallies.map(({ at }) => at),
      ]),
      ...example.book.map(({ keptAt }) => keptAt),
      ...[...meterings, ...bedTests].map(({ at }) => at),
    ];
    expect(times.every((time) => time < openedAt)).toBe(true);
  });

  it('has every card read to the last cell, and a setting to recommend for each sheet', () => {
    for (const study of example.studies) {
      for (const card of study.cards) {
        const { cells, leftOut } = readCard(card, study.events);
        expect(leftOut).toEqual([]);
        expect(cells.every(({ reading }) => reading.kind === 'graded')).toBe(true);
      }
      expect(fitStudy(toCutStudy(study)).recommended, study.id).not.toBeNull();
    }
  });

  it('has meterings of a tube that has not changed, and a bed whose four corners are cleared', () => {
    const [earlier, later] = example.meterings;
    if (earlier === undefined || later === undefined) throw new Error('no meterings');
    expect(meterReport(later).ok).toBe(true);
    const change = compareMeterings(earlier, later);
    expect(change.ok ? change.value.how : change.problem.code).toBe('same');
    const [test] = example.bedTests;
    if (test === undefined) throw new Error('no corners');
    // As the virtual workshop is: it has no tilt.
    expect(bedTestReport(test).verdict.kind).toBe('even');
    expect(test.cells.some(({ grade }) => grade !== 'out')).toBe(true);
  });

  it('keeps a setting whose orders do not speak against its promise', () => {
    const [entry] = example.book;
    const tallies = example.studies.flatMap((study) => study.tallies);
    expect(tallies.map(({ provenSettingId }) => provenSettingId)).toEqual([entry?.id, entry?.id]);
    expect(entry === undefined ? '' : whatOrdersSay(entry.promise, tallies).kind).toBe('fine');
    expect(entry?.surePct).toBeGreaterThan(95);
  });
});
