import { inflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../test/plainStudy.ts';
import { explainStudy } from '../core/explain/explain.ts';
import { reasoningPdf } from './reasoningPdf.ts';

const options = { stock: '3 mm plywood', version: '9.9.9', madeAt: '2031-05-06T07:08:09.000Z' };
const rung = (speedMmPerS: number, ...grades: readonly ('out' | 'hangs' | 'stays')[]) =>
  grades.map((grade) => ({ powerPct: 30, speedMmPerS, grade, sheet: 's1' }));
const study = plainStudy({
  cells: [
    ...rung(12, 'out', 'out', 'out'),
    ...rung(14, 'out', 'out', 'out'),
    ...rung(16, 'out', 'out', 'hangs'),
    ...rung(18, 'hangs', 'out', 'stays'),
    ...rung(21, 'stays', 'stays', 'stays'),
  ],
  ask: { powerPct: 30 },
});
const explanation = explainStudy(study);

const pagesOf = (pdf: Uint8Array): number =>
  Buffer.from(pdf)
    .toString('latin1')
    .match(/\/Type \/Page\b/g)?.length ?? 0;

/** The drawing orders of all pages, unpacked. */
const ordersOf = (pdf: Uint8Array): string =>
  [
    ...Buffer.from(pdf)
      .toString('latin1')
      .matchAll(/stream\n([\s\S]*?)\nendstream/g),
  ]
    .map(([, body = '']) => {
      try {
        return inflateSync(Buffer.from(body, 'latin1')).toString('latin1');
      } catch {
        return '';
      }
    })
    .join('\n');

describe('the page of reasons', () => {
  it('is one page, and the same bytes for the same reasons', async () => {
    const pdf = await reasoningPdf(study, explanation, options);
    expect(pagesOf(pdf)).toBe(1);
    expect(
      Buffer.from(await reasoningPdf(study, explanation, options)).equals(Buffer.from(pdf)),
    ).toBe(true);
  });

  it('is one page with twice the powers and cells, and where there is no answer', async () => {
    const large = plainStudy({
      cells: [
        ...study.cells,
        ...study.cells.map((cell) => ({
          ...cell,
          powerPct: 40,
          speedMmPerS: 1.3 * cell.speedMmPerS,
        })),
        ...study.cells.map((cell) => ({
          ...cell,
          powerPct: 50,
          speedMmPerS: 1.6 * cell.speedMmPerS,
        })),
      ],
      ask: { powerPct: 30 },
    });
    expect(pagesOf(await reasoningPdf(large, explainStudy(large), options))).toBe(1);
    const blank = plainStudy();
    expect(pagesOf(await reasoningPdf(blank, explainStudy(blank), options))).toBe(1);
  });

  it('draws a ring for what carries the answer, dashed where it holds it back', async () => {
    const drawn = ordersOf(await reasoningPdf(study, explanation, options));
    const dashed = drawn.match(/\[2\.2 1\.4\]/g)?.length ?? 0;
    const holding =
      explanation.speed?.cells.filter((left) => (left?.shiftPct ?? 0) > 0).length ?? 0;
    expect(dashed).toBeGreaterThan(0);
    expect(dashed).toBeLessThanOrEqual(holding);
  });
});
