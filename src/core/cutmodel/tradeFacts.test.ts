import { param } from '../../../test/samples/param.ts';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { Grade } from '../reading/grade.ts';
import type { Ask, StudyCell } from './cutStudy.ts';
import { fitStudy } from './fitStudy.ts';
import { proposeNextCard } from './nextCard.ts';

// Facts of the trade; every figure in this file is common practice, no source.

const powers = [20, 25, 30, 35, 40];
const gridOf = (
  sheet: string,
  speeds: readonly number[],
  grade: (speedMmPerS: number, powerPct: number) => Grade,
): readonly StudyCell[] =>
  speeds.flatMap((speedMmPerS) =>
    powers.map((powerPct) => ({
      powerPct,
      speedMmPerS,
      passes: 1,
      sheet,
      grade: grade(speedMmPerS, powerPct),
    })),
  );

/** 3 mm sheet, 10–30 mm/s × 20–40 %: all out at 10; at 15 all but 20 %; at 20 only 35 %, and 40 % hung; none beyond. */
const firstCard = gridOf('first', [10, 15, 20, 25, 30], (v, p) => {
  if (v === 10) return 'out';
  if (v === 15) return p >= 25 ? 'out' : 'stays';
  if (v === 20 && p >= 35) return p === 35 ? 'out' : 'hangs';
  return 'stays';
});

/** The practitioner's next: 10–20 in steps of 2.5. All out at 10 and 12.5; at 15 from 30 %; at 20 40 % out, 35 % hung. */
const secondCard = gridOf('second', [10, 12.5, 15, 20], (v, p) => {
  if (v <= 12.5) return 'out';
  if (v === 15) return p >= 30 ? 'out' : 'stays';
  if (p === 40) return 'out';
  return p === 35 ? 'hangs' : 'stays';
});

const ask = (cells: readonly StudyCell[], what: Ask) => fitStudy(plainStudy({ cells, ask: what }));

describe('one card of 25 on a 3 mm sheet, read at 15 mm/s', () => {
  it('finds 25 % a toss-up', () => {
    const { asked } = ask(firstCard, { powerPct: 25, speedMmPerS: 15 });
    expect(asked?.outOf100Mean).toBeGreaterThan(35);
    expect(asked?.outOf100Mean).toBeLessThan(70);
  });

  it('finds 30 %, the practitioner’s choice, good but unproven', () => {
    const { asked } = ask(firstCard, { powerPct: 30, speedMmPerS: 15 });
    expect(asked?.outOf100Mean).toBeGreaterThan(85);
    expect(asked?.outOf100Mean).toBeLessThan(97);
    expect(asked?.sureOfPromisePct).toBeGreaterThan(20);
    expect(asked?.sureOfPromisePct).toBeLessThan(60);
  });

  const answer = ask(firstCard, { speedMmPerS: 15 });

  it('puts even odds of 97 in 100 at 29–35 %', () => {
    expect(answer.evenOdds?.powerPct).toBeGreaterThanOrEqual(29);
    expect(answer.evenOdds?.powerPct).toBeLessThanOrEqual(35);
  });

  it('asks 34–43 % for the promise, and says that this is one card’s thinness', () => {
    expect(answer.recommended?.powerPct).toBeGreaterThanOrEqual(34);
    expect(answer.recommended?.powerPct).toBeLessThanOrEqual(43);
    expect(answer.warnings.map(({ code }) => code)).toContain('thin-evidence');
  });

  it('does not take the hung cell at 40 % and 20 mm/s at its word', () => {
    const at40 = ask(firstCard, { powerPct: 40, speedMmPerS: 20 }).asked;
    const at35 = ask(firstCard, { powerPct: 35, speedMmPerS: 20 }).asked;
    expect(at40?.outOf100Mean).toBeGreaterThan(at35?.outOf100Mean ?? 100);
  });

  it('calls the half at 25 and 30 mm/s uninformative', () => {
    const told = answer.warnings.find(({ code }) => code === 'speeds-told-little');
    expect(String(param(told, 'speeds')).split(', ')).toEqual(expect.arrayContaining(['25', '30']));
    expect(String(param(told, 'speeds')).split(', ')).not.toContain('15');
  });

  it.each<Ask>([{}, { powerPct: 30 }, { speedMmPerS: 15 }])(
    'proposes a next card within 9–22 mm/s, asked %o',
    (what) => {
      const study = plainStudy({ cells: firstCard, ask: what });
      const { cells } = proposeNextCard(study, { cellsWanted: 12, settingsAtMost: 6 });
      expect(cells).toHaveLength(12);
      for (const cell of cells) {
        expect(cell.speedMmPerS).toBeGreaterThanOrEqual(9);
        expect(cell.speedMmPerS).toBeLessThanOrEqual(22);
      }
    },
  );
});

describe('with the practitioner’s next card as well', () => {
  const one = ask(firstCard, { speedMmPerS: 15 });
  const both = ask([...firstCard, ...secondCard], { speedMmPerS: 15 });

  it('brings the promised power at 15 mm/s down, to 33–40 %', () => {
    expect(both.recommended?.powerPct).toBeLessThan(one.recommended?.powerPct ?? 0);
    expect(both.recommended?.powerPct).toBeGreaterThanOrEqual(33);
    expect(both.recommended?.powerPct).toBeLessThanOrEqual(40);
  });

  it('leaves even odds of 97 at 29–35 %', () => {
    expect(both.evenOdds?.powerPct).toBeGreaterThanOrEqual(29);
    expect(both.evenOdds?.powerPct).toBeLessThanOrEqual(35);
  });

  it('calls the two cards’ disagreement at 20 mm/s noise', () => {
    const noise = both.warnings.find(({ code }) => code === 'disagreement-is-noise');
    expect(String(param(noise, 'speeds')).split(', ')).toContain('20');
    expect(both.warnings.map(({ code }) => code)).not.toContain('look-again');
  });
});

describe('a card made for 6 mm and cut on 3 mm, all out', () => {
  const cells = gridOf('thick', [4, 6, 8, 10, 12], () => 'out');

  it('gives a bound only', () => {
    const answer = ask(cells, {});
    expect(answer.recommended).toBeNull();
    expect(answer.reason?.code).toBe('all-came-out');
    expect(param(answer.reason, 'fastestMmPerS')).toBe(12);
  });

  it('moves the next card up in speed or down in power', () => {
    const next = proposeNextCard(plainStudy({ cells }), { cellsWanted: 12, settingsAtMost: 6 });
    const fastest = Math.max(...next.cells.map((cell) => cell.speedMmPerS));
    expect(fastest).toBeGreaterThan(20);
    for (const cell of next.cells) {
      expect(cell.speedMmPerS > 12 || cell.powerPct <= 30).toBe(true);
    }
  });
});

describe('a sheet sold as 6 mm that measures 5.25 mm, with the 3 mm cards as the only history', () => {
  it.each<Ask>([{}, { powerPct: 30 }, { powerPct: 40 }])(
    'gets a first card that overlaps 8–12 mm/s × 20–40 %, asked %o',
    (what) => {
      const study = plainStudy({
        stock: { material: 'plywood', thicknessMm: 5.25 },
        cells: [...firstCard, ...secondCard].map((cell) => ({ ...cell, thicknessMm: 3 })),
        ask: what,
      });
      const { cells } = proposeNextCard(study, { cellsWanted: 12, settingsAtMost: 6 });
      const inside = cells.filter(
        ({ powerPct, speedMmPerS }) =>
          powerPct >= 20 && powerPct <= 40 && speedMmPerS >= 8 && speedMmPerS <= 12,
      );
      expect(inside.length).toBeGreaterThan(0);
    },
  );
});

describe('more air', () => {
  const atAir = (kPa: number | undefined, sheet: string, out: (v: number, p: number) => boolean) =>
    gridOf(sheet, [10, 15, 20], (v, p) => (out(v, p) ? 'out' : 'stays')).map((cell) =>
      kPa === undefined ? cell : { ...cell, air: { kPa } },
    );
  // 20 psi = 137.9 kPa let more cells out than an unrecorded lower air.
  const cells = [
    ...atAir(undefined, 'low', (v, p) => v === 10 || (v === 15 && p >= 35)),
    ...atAir(137.9, 'high', (v, p) => v === 10 || (v === 15 && p >= 30) || (v === 20 && p >= 40)),
  ];

  it('is said to be faster, and not to be very sure', () => {
    const answer = ask(cells, { powerPct: 30 });
    const compared = answer.warnings.find(({ code }) => code === 'air-compared');
    const sign = param(compared, 'air') === 'unknown' ? -1 : 1;
    expect(sign * Number(param(compared, 'fasterPct'))).toBeGreaterThan(0);
    const sure = Number(param(compared, 'sureFasterPct'));
    expect(sign > 0 ? sure : 100 - sure).toBeGreaterThan(60);
    expect(sign > 0 ? sure : 100 - sure).toBeLessThan(98);
  });
});
