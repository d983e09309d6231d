import { describe, expect, it } from 'vitest';
import { plainDialect } from '../../core/dialect/gcodeDialect.ts';
import { undescribedMachine } from '../../core/machine/machine.ts';
import { lengthMm } from '../../core/path/polyline.ts';
import { fileForMachine } from '../../formats/fileForMachine.ts';
import { machineFileKinds } from '../../formats/machineFiles.ts';
import { readToolpath } from '../../formats/readToolpath.ts';
import { nestFromDrawing } from './nestFromDrawing.ts';
import { splitDrawing, type SplitDrawing } from './splitDrawing.ts';

const ring = (x: number, y: number): string =>
  `<path d="M${String(x)} ${String(y)}h20v20h-20z" fill="none" stroke="red"/>` +
  `<path d="M${String(x + 6)} ${String(y + 6)}h8v8h-8z" fill="none" stroke="red"/>`;

/** Thirty rings in rows, and a mark that frees nothing. */
const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="180mm" height="150mm" viewBox="0 0 180 150">${Array.from(
  { length: 30 },
  (_, i) => ring(5 + 28 * (i % 6), 5 + 28 * Math.floor(i / 6)),
).join('')}<path d="M2 148h40" fill="none" stroke="blue"/></svg>`;

const settings = [
  { setting: { powerPct: 34, speedMmPerS: 14, passes: 1 }, parts: 24 },
  { setting: { powerPct: 34, speedMmPerS: 15, passes: 1 }, parts: 6 },
];

const split = (text = svg): SplitDrawing => {
  const done = splitDrawing({ text, settings, dialect: plainDialect });
  if (!done.ok) throw new Error(done.problem.code);
  return done.value;
};

describe('a drawing with two settings', () => {
  it('has the parts on layers of their own, in words that spell the setting, the mark before them', () => {
    const { drawing, parts, rest, others } = split();
    expect([parts, rest, others[0]?.length]).toEqual([30, 1, 6]);
    expect(drawing.layers.map(({ name }) => name)).toEqual([
      'rest',
      'A 14.0mmps 34pct corner34',
      'B 15.0mmps 34pct corner34',
    ]);
    expect(drawing.layers.map(({ parts: own }) => own.length)).toEqual([1, 24, 6]);
  });

  it('cuts each hole before the outline around it, and no two parts of the other setting side by side', () => {
    const { drawing } = split();
    for (const { parts } of drawing.layers.slice(1))
      for (const { polylines } of parts)
        expect(polylines.map((line) => Math.round(lengthMm(line)))).toEqual([32, 80]);
    const corners = drawing.layers[2]?.parts.map(({ polylines }) => polylines[1]?.[0] ?? [0, 0]);
    for (const [i, [x, y]] of (corners ?? []).entries())
      for (const [u, v] of (corners ?? []).slice(i + 1))
        expect(Math.hypot(x - u, y - v)).toBeGreaterThan(29);
  });

  it('takes the parts that the picture to tap on shows', () => {
    const nest = nestFromDrawing(svg);
    if (!nest.ok) throw new Error(nest.problem.code);
    expect(nest.value.partLengthMm).toBe(112);
    expect(nest.value.nest.apart?.slice(0, 6)).toEqual(split().others[0]);
  });

  it.each(machineFileKinds)(
    'is written, read back and checked as %s, nothing moved and nothing lost',
    async (kind) => {
      const whole = split(kind === 'gcode' ? svg.replace(/<path d="M2 148.*?\/>/, '') : svg);
      const file = await fileForMachine(kind, {
        of: { title: 'Sheet', plainTitle: 'sheet', drawing: whole.drawing },
        machine: undescribedMachine,
        dialect: plainDialect,
      });
      if (!file.ok) throw new Error(file.problem.code);
      const [before, after] = [readToolpath(svg), readToolpath(file.value)];
      if (!before.ok || !after.ok) throw new Error('not read');
      const corners = (path: typeof before.value): readonly string[] =>
        path.lines
          .filter(({ points }) => points.length > 2)
          .map(({ points }) =>
            points
              .map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`)
              .sort()
              .join(','),
          )
          .sort();
      expect(corners(after.value)).toEqual(corners(before.value));
    },
  );

  it('reads a program of its own writing again, and sets only other speeds in it', async () => {
    const { drawing } = split(svg.replace(/<path d="M2 148.*?\/>/, ''));
    const file = await fileForMachine('gcode', {
      of: { title: 'Sheet', plainTitle: 'sheet', drawing },
      machine: undescribedMachine,
      dialect: plainDialect,
    });
    if (!file.ok) throw new Error(file.problem.code);
    const again = split(file.value);
    expect(again.kind).toBe('gcode');
    expect(again.drawing.layers.map(({ parts }) => parts.length)).toEqual([24, 6]);
  });

  it('is refused where the drawing gives no part', () => {
    const line =
      '<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm" viewBox="0 0 9 9"><path d="M1 1h5" stroke="red"/></svg>';
    const refusal = splitDrawing({ text: line, settings, dialect: plainDialect });
    expect(refusal).toMatchObject({ ok: false, problem: { code: 'proof-nothing-to-cut' } });
  });
});
