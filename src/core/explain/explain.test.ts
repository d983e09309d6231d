import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { StudyCell } from '../cutmodel/cutStudy.ts';
import { fit } from '../cutmodel/fit.ts';
import { fitStudy } from '../cutmodel/fitStudy.ts';
import { links } from '../cutmodel/links.ts';
import { target } from '../cutmodel/likelihood.ts';
import { parameterLayout, type Model } from '../cutmodel/model.ts';
import { posteriorOf } from '../cutmodel/posterior.ts';
import type { Grade } from '../reading/grade.ts';
import { explainStudy } from './explain.ts';
import { modelWithout } from './leaveOut.ts';
import { readingProbability } from './readingProbability.ts';

const rung = (speedMmPerS: number, grades: readonly Grade[]): readonly StudyCell[] =>
  grades.map((grade) => ({ powerPct: 30, speedMmPerS, passes: 1, sheet: 's1', grade }));

const cells = [
  ...rung(12, ['out', 'out', 'out', 'out']),
  ...rung(14, ['out', 'out', 'out', 'out']),
  ...rung(15.5, ['out', 'out', 'out', 'out']),
  ...rung(17, ['out', 'out', 'hangs', 'out']),
  ...rung(19, ['hangs', 'stays', 'out', 'stays']),
  ...rung(21, ['stays', 'stays', 'stays', 'hangs']),
];
const study = plainStudy({ cells, ask: { powerPct: 30 } });
const explained = explainStudy(study);

const speedOf = ({ speed }: typeof explained) => {
  if (speed === undefined) throw new Error('this study has an answer');
  return speed;
};

describe('the probability of a reading at each point', () => {
  it('is what the reading adds to the log likelihood', () => {
    const { compiled } = fit(study);
    const [link] = links;
    if (link === undefined) throw new Error('there is a link');
    compiled.model.observations.forEach((cut, index) => {
      const model: Model = compiled.model;
      const layout = parameterLayout(model);
      const without = {
        ...model,
        observations: model.observations.flatMap((each, i) =>
          i !== index ? [each] : each.count > 1 ? [{ ...each, count: each.count - 1 }] : [],
        ),
      };
      const posterior = posteriorOf(model, { normal: 1 }, 50);
      const logs = readingProbability(posterior, cut).map(Math.log);
      // The points' z are not kept: a point of the prior's middle is built and read both ways.
      const z = new Float64Array(layout.size);
      const added = target(model, layout, link).value(z) - target(without, layout, link).value(z);
      const middle = {
        ...posterior,
        count: 1,
        link: new Uint8Array(1),
        lnV50: Float64Array.of(model.priors.lnV50.mean),
        powerExponent: Float64Array.of(model.priors.powerExponent.mean),
        sigma: Float64Array.of(Math.exp(model.priors.lnSigma.mean)),
        hangBand: Float64Array.of(Math.exp((model.priors.lnHangBand as { mean: number }).mean)),
        flawsPerMetre: Float64Array.of((model.priors.flawsPerMetre?.mean ?? 0) * Math.LN2),
        sheetEffect: () => new Float64Array(1),
      };
      expect(Math.log(readingProbability(middle, cut)[0] ?? 0)).toBeCloseTo(added, 8);
      expect(logs.every((log) => log <= 0)).toBe(true);
    });
  });
});

describe('an answer without each part', () => {
  it('is slower without a cell that came out near the changeover, and faster without one that hung there', () => {
    const { cells: left } = speedOf(explained);
    const shiftOf = (speedMmPerS: number, grade: Grade): number => {
      const index = cells.findIndex((c) => c.speedMmPerS === speedMmPerS && c.grade === grade);
      return left[index]?.shiftPct ?? Number.NaN;
    };
    expect(shiftOf(17, 'out')).toBeLessThan(-0.5);
    expect(shiftOf(17, 'hangs')).toBeGreaterThan(0.5);
    // Far from the changeover a cell hardly carries anything.
    expect(Math.abs(shiftOf(12, 'out'))).toBeLessThan(0.5);
  });

  it('is the answer to the study that never had the cell, to a step', () => {
    const { cells: left } = speedOf(explained);
    [0, 5, 9, 13, 14, 18].forEach((index) => {
      const without = fitStudy({ ...study, cells: cells.filter((_, i) => i !== index) });
      const refitted = without.recommended?.speedMmPerS ?? Number.NaN;
      expect(Math.abs((left[index]?.speedMmPerS ?? Number.NaN) - refitted)).toBeLessThanOrEqual(
        0.21,
      );
    });
  });

  it('is none, with its reason, without the only card, and without all that came out', () => {
    const { cards } = speedOf(explained);
    expect(cards).toHaveLength(1);
    expect(cards[0]?.speedMmPerS).toBeNull();
    expect(cards[0]?.reason?.code).toBe('nothing-read-yet');
    const two = explainStudy(
      plainStudy({
        cells: [...rung(12, ['out', 'out']), ...rung(16, ['stays', 'stays'])],
        ask: { powerPct: 30 },
      }),
    );
    expect(speedOf(two).rungs.map(({ reason }) => reason?.code)).toEqual([
      'none-came-out',
      'all-came-out',
    ]);
  });

  it('counts every read cell in exactly one rung and one card', () => {
    const { rungs, cards } = speedOf(explained);
    for (const groups of [rungs, cards]) {
      expect(groups.flatMap((group) => group.cells).sort((a, b) => a - b)).toEqual([
        ...cells.keys(),
      ]);
    }
    expect(rungs).toHaveLength(6);
  });

  it('leaves the model of the rest whole', () => {
    const { compiled } = fit(study);
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(cells.length - 1)), (gone) => {
        const { observations } = modelWithout(compiled, { cells: gone });
        const left = observations.reduce((sum, { count }) => sum + count, 0);
        expect(left).toBe(cells.length - gone.length);
      }),
    );
  });
});

describe('one more cell', () => {
  it('has grades whose probabilities sum to 1', () => {
    for (const { after } of speedOf(explained).nextCells) {
      const sum = after.out.probability + after.hangs.probability + after.stays.probability;
      expect(sum).toBeCloseTo(1, 6);
    }
  });

  // Far beyond the changeover it may be the other way round: a shape that came out there tells of scatter.
  it('at the answer never raises it by hanging, nor lowers it by coming out', () => {
    const { nextCells, speedMmPerS } = speedOf(explained);
    expect(nextCells.length).toBeGreaterThan(3);
    for (const { after } of nextCells.slice(0, 2)) {
      expect(after.out.speedMmPerS ?? 0).toBeGreaterThanOrEqual(speedMmPerS - 0.11);
      expect(after.stays.speedMmPerS ?? 0).toBeLessThanOrEqual(speedMmPerS + 0.01);
    }
  });

  it('gives the answer of the study with that cell, to a step', () => {
    const { nextCells } = speedOf(explained);
    const [, at] = nextCells;
    if (at === undefined) throw new Error('the recommended speed is among them');
    const more = fitStudy({ ...study, cells: [...cells, ...rung(at.speedMmPerS, ['hangs'])] });
    const refitted = more.recommended?.speedMmPerS ?? Number.NaN;
    expect(Math.abs((at.after.hangs.speedMmPerS ?? Number.NaN) - refitted)).toBeLessThanOrEqual(
      0.21,
    );
  });
});

describe('what was learnt', () => {
  const learnt = (name: string, from = explained) =>
    from.learnt.find((one) => one.name === name)?.learntPct ?? Number.NaN;

  it('is all but all of the changeover, some of the scatter, and nothing of power where one power was cut', () => {
    expect(learnt('changeover')).toBeGreaterThan(95);
    expect(learnt('scatter')).toBeGreaterThan(30);
    expect(learnt('power')).toBeLessThan(10);
  });

  it('is nothing where nothing was read', () => {
    const blank = explainStudy(plainStudy({ ask: { powerPct: 30 } }));
    expect(blank.speed).toBeUndefined();
    for (const { learntPct } of blank.learnt) expect(learntPct).toBeLessThan(12);
  });

  it('is more the more cells there are', () => {
    const few = explainStudy(
      plainStudy({ cells: cells.filter((_, i) => i % 4 === 2), ask: { powerPct: 30 } }),
    );
    expect(learnt('scatter', few)).toBeLessThan(learnt('scatter'));
  });
});

describe('the answer under other assumptions', () => {
  const shift = (name: string): number =>
    speedOf(explained).whatIf.find((one) => one.name === name)?.shiftPct ?? Number.NaN;

  it('is slower the more scatter was expected, and where heavy tails alone are believed', () => {
    expect(shift('scatter-expected-twice')).toBeLessThan(-2);
    expect(shift('scatter-expected-half')).toBeGreaterThan(2);
    expect(shift('student3-alone')).toBeLessThan(shift('normal-alone'));
  });

  it('hardly depends on what was expected of the changeover, which the cells tell', () => {
    expect(Math.abs(shift('changeover-twice-as-unsure'))).toBeLessThan(0.5);
  });
});
