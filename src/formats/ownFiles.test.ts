import { describe, expect, it } from 'vitest';
import { fourCorners } from '../core/bed/fourCorners.ts';
import type { CardDrawing } from '../core/card/cardDrawing.ts';
import { colourTrial } from '../core/card/colourTrial.ts';
import { rampCard, rampDrawing } from '../core/card/rampCard.ts';
import { timedJobDrawing } from '../core/card/timedJobDrawing.ts';
import { checkToolpath, type CheckReport } from '../core/filecheck/checkToolpath.ts';
import { plainDialect } from '../core/dialect/gcodeDialect.ts';
import { kerfCard, kerfCardDrawing, type KerfCardWish } from '../core/kerf/kerfCard.ts';
import { markStrip, markStripDrawing, type StripKind } from '../core/marking/markStrip.ts';
import type { Machine } from '../core/machine/machine.ts';
import { jobsToTime } from '../core/motion/timedJobs.ts';
import type { Outcome } from '../core/problem.ts';
import { writeDxf } from './dxf/writeDxf.ts';
import { writeDrawingGcode } from './gcode/writeGcode.ts';
import { writeTimedGcode } from './gcode/writeTimedGcode.ts';
import { readToolpath } from './readToolpath.ts';
import { writeSvg } from './svg/writeSvg.ts';

// What the tool writes beside cards goes through the same check before anyone runs it.

const bed = { widthMm: 600, heightMm: 400 };
const machine: Machine = { maxPowerPct: 80, speedRangeMmPerS: [1, 400], bed };
const value = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value;
};
const check = (text: string): CheckReport => checkToolpath(value(readToolpath(text)), { machine });
const setting = { powerPct: 34, speedMmPerS: 17, passes: 1 };
const gentle = { powerPct: 12, speedMmPerS: 60, passes: 1 };

const kerf = (wish: KerfCardWish): CardDrawing =>
  kerfCardDrawing(
    value(
      kerfCard({
        ...{ wish, setting, scoring: gentle, thicknessMm: 3.1, machine },
        believed: () => ({ v50MmPerS: 12, lnSd: 0.6 }),
      }),
    ),
  );

const believed = () => ({ v50MmPerS: 12, lnSd: 0.6 });
const strip = (kind: StripKind): CardDrawing =>
  markStripDrawing(
    value(markStrip({ kind, steps: 8, lineSpacingMm: 0.1 }, setting, { machine, believed })),
  );

const drawings: Readonly<Record<string, CardDrawing>> = {
  'marking strip of shades': strip('shades'),
  'marking strip of lines': strip('lines'),
  'focus ramp': rampDrawing(
    value(
      rampCard({
        ramp: { lengthMm: 150, blockMm: 12, nozzleGapMm: 20 },
        setting: gentle,
        machine,
        believed: () => ({ v50MmPerS: 12, lnSd: 0.6 }),
      }),
    ),
  ),
  'kerf comb': kerf({
    ...{ kind: 'comb', pieceMm: [300, 200], places: 4, directions: ['across', 'up'] },
  }),
  'slot card': kerf({ kind: 'slots', kerfMm: 0.2 }),
  'slot card turned': kerf({ kind: 'slots', direction: 'up' }),
  'four corners': value(
    fourCorners({
      ...{ bed, setting, scoring: gentle, shape: 'star', sizeMm: 14, cellsEach: 4, marginMm: 10 },
      limits: { machine },
    }),
  ).drawing,
};

describe.each(Object.entries(drawings))('a %s', (name, drawing) => {
  it.each(['svg', 'dxf', 'gcode'] as const)('passes the check as %s', (kind) => {
    const text = {
      svg: () => writeSvg(drawing, name),
      dxf: () => writeDxf(drawing),
      gcode: () => value(writeDrawingGcode({ title: name, drawing }, plainDialect)),
    }[kind]();
    expect(check(text).findings).toEqual([]);
  });
});

describe('a colour trial', () => {
  it('passes the check', () => {
    expect(check(writeSvg(colourTrial(), 'trial')).findings).toEqual([]);
    expect(check(writeDxf(colourTrial())).findings).toEqual([]);
  });
});

describe.each(jobsToTime(machine).map((job) => [job.kind, job] as const))(
  'the job to be timed %s',
  (_, job) => {
    it('passes the check, in which a program says that it lights no beam', () => {
      const drawing = timedJobDrawing(job);
      expect(check(writeSvg(drawing, 'job')).findings).toEqual([]);
      expect(check(writeDxf(drawing)).findings).toEqual([]);
      const report = check(writeTimedGcode(job, plainDialect, []));
      expect(report.findings.map(({ code, severity }) => [code, severity])).toEqual([
        ['check-beam-never-on', 'remark'],
      ]);
    });

    it('is faulted once it lights the beam', () => {
      const lit = writeTimedGcode(job, plainDialect, [])
        .replace('M5 S0', 'M3 S0')
        .replaceAll(/(G1 .*) S0/g, '$1 S300');
      expect(check(lit).findings.map(({ code }) => code)).toContain('check-beam-not-disarmed');
    });
  },
);

describe('any other program', () => {
  it('that never lights the beam cuts nothing', () => {
    expect(check('G21 G90\nG0 X5 Y5\nG1 X20 F600 S0\nM2').ok).toBe(false);
  });
});
