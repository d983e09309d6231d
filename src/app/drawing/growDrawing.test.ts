import { describe, expect, it } from 'vitest';
import { writeDxf } from '../../formats/dxf/writeDxf.ts';
import { readToolpath } from '../../formats/readToolpath.ts';
import { writeSvg } from '../../formats/svg/writeSvg.ts';
import { signedAreaMm2 } from '../../core/path/polyline.ts';
import { growDrawing } from './growDrawing.ts';

const svg = (body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">${body}</svg>`;
const plate = svg(
  '<g id="cut" fill="none" stroke="#ff0000"><path d="M2 2h40v30h-40z"/><circle cx="20" cy="15" r="6"/></g>' +
    '<g id="fold" fill="none" stroke="#0000ff"><path d="M5 28h20"/></g>',
);

const grown = (text: string, kerfMm: number) => {
  const outcome = growDrawing({ text, kerfMm });
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value;
};

describe('a drawing grown by half the kerf', () => {
  it.each(['svg', 'dxf'] as const)(
    'reads again as %s with its outline wider, its hole narrower and its layers kept',
    (kind) => {
      const { drawing } = grown(plate, 0.4);
      const read = readToolpath(kind === 'svg' ? writeSvg(drawing, 'grown') : writeDxf(drawing));
      if (!read.ok) throw new Error(read.problem.code);
      const [fold, hole, outline] = read.value.lines;
      expect([fold?.layer, hole?.layer, outline?.layer]).toEqual(['fold', 'cut', 'cut']);
      expect(fold?.points).toEqual([
        [5, 12],
        [25, 12],
      ]);
      expect(Math.abs(signedAreaMm2(outline?.points ?? []))).toBeCloseTo(40.4 * 30.4, 2);
      // A flattened circle is smaller than the circle by what its chords cut off.
      const circle = Math.PI * 5.8 ** 2;
      expect(Math.abs(signedAreaMm2(hole?.points ?? [])) / circle).toBeGreaterThan(0.998);
      expect(Math.abs(signedAreaMm2(hole?.points ?? [])) / circle).toBeLessThan(1);
    },
  );

  it('says what stays and what is lost', () => {
    const { lost, remarks, parts, rest } = grown(
      plate.replace('<circle', '<rect x="30" y="10" width="0.1" height="8"/><circle'),
      0.4,
    );
    expect([parts, rest]).toEqual([1, 1]);
    expect(lost.map(({ what }) => what)).toEqual(['hole']);
    expect(remarks.map(({ code }) => code)).toEqual(['grow-hole-lost', 'grow-lines-stay']);
  });

  it('refuses a program, and a drawing without parts', () => {
    expect(
      growDrawing({ text: 'G21\nG90\nG0 X0 Y0\nM3 S500\nG1 X10 F600\nM5\n', kerfMm: 0.2 }),
    ).toMatchObject({
      problem: { code: 'grow-not-a-drawing' },
    });
    expect(
      growDrawing({ text: svg('<path d="M0 0h9" fill="none" stroke="#000"/>'), kerfMm: 0.2 }),
    ).toMatchObject({
      problem: { code: 'proof-nothing-to-cut' },
    });
  });
});
