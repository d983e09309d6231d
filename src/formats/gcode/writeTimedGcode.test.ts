import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { timedJobDrawing, timedJobLines } from '../../core/card/timedJobDrawing.ts';
import { plainDialect } from '../../core/dialect/gcodeDialect.ts';
import { undescribedMachine } from '../../core/machine/machine.ts';
import { jobsToTime, timedJobKinds } from '../../core/motion/timedJobs.ts';
import { lengthMm } from '../../core/path/polyline.ts';
import { readToolpath } from '../readToolpath.ts';
import { writeDxf } from '../dxf/writeDxf.ts';
import { writeSvg } from '../svg/writeSvg.ts';
import { gcodeFormat } from './gcodeFormat.ts';
import { writeTimedGcode } from './writeTimedGcode.ts';

const jobs = jobsToTime(undescribedMachine);
const programOf = (at: number) => {
  const job = jobs[at];
  if (job === undefined) throw new Error('no such job');
  return { job, lines: writeTimedGcode(job, plainDialect, ['Beam off.']).split('\n') };
};

describe('a job to be timed as G-code', () => {
  it('is every job of the tool', () => {
    expect(jobs.map(({ kind }) => kind)).toEqual(timedJobKinds);
  });

  it('is not written where a line of the machine’s own could light it', async () => {
    const [timed] = jobs;
    if (timed === undefined) throw new Error('no job');
    const drawing = timedJobDrawing(timed);
    const of = { title: 'job', plainTitle: 'job', drawing, timed };
    const write = (opening: readonly string[]) =>
      gcodeFormat.write({ of, machine: undescribedMachine, dialect: { ...plainDialect, opening } });
    expect((await write(['G54'])).ok).toBe(true);
    expect(await write(['M68 E0 Q5'])).toMatchObject({
      problem: { code: 'gcode-line-switches-output' },
    });
  });

  it.each(jobs.map(({ kind }, at) => ({ kind, at })))('$kind never lights the beam', ({ at }) => {
    const commands = programOf(at).lines.filter((line) => !line.startsWith('('));
    expect(commands.join('\n')).not.toMatch(/M0*[34]\b/);
    for (const [, power] of commands.join('\n').matchAll(/S([\d.]+)/g)) expect(power).toBe('0');
  });

  it('feeds at the speed of the job: 80 mm/s is F4800, and stands before and after each line', () => {
    const { lines } = programOf(0);
    const feeds = lines.flatMap((line, at) => (line.startsWith('G1 ') ? [at] : []));
    expect(feeds).toHaveLength(32);
    for (const at of feeds) {
      expect(lines[at]).toMatch(/ F4800 S0$/);
      expect(lines[at - 1]).toBe('G4 P0');
      expect(lines[at + 1]).toBe('G4 P0');
    }
  });

  it('stays on the bed, whatever the bed', () => {
    const side = fc.double({ min: 60, max: 2000, noNaN: true });
    fc.assert(
      fc.property(side, side, (widthMm, heightMm) => {
        for (const job of jobsToTime({ ...undescribedMachine, bed: { widthMm, heightMm } })) {
          const points = timedJobLines(job).lines.flat();
          const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
          expect(Math.min(...xs, ...ys)).toBeGreaterThanOrEqual(-1e-9);
          expect(Math.max(...xs)).toBeLessThanOrEqual(widthMm);
          expect(Math.max(...ys)).toBeLessThanOrEqual(heightMm);
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe('a job to be timed as a drawing', () => {
  it.each(jobs.map((job) => ({ kind: job.kind, job })))(
    '$kind reads back as long as it is, and says the speed and that the beam is off',
    ({ job }) => {
      const { lines } = timedJobLines(job);
      const drawn = lines.reduce((sum, line) => sum + lengthMm(line), 0);
      const drawing = timedJobDrawing(job);
      expect(drawing.layers[0]?.name).toMatch(/ 80mmps beam-disarmed$/);
      for (const text of [writeSvg(drawing, job.kind), writeDxf(drawing)]) {
        const read = readToolpath(text);
        if (!read.ok) throw new Error(read.problem.code);
        const back = read.value.lines.reduce((sum, line) => sum + lengthMm(line.points), 0);
        expect(back / drawn).toBeCloseTo(1, 3);
      }
    },
  );
});
