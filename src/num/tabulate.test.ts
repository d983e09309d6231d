import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf, normalPdf } from './normal.ts';
import { tabulateSigmoid } from './tabulate.ts';

const quick = tabulateSigmoid(normalCdf, normalPdf);

describe('tabulateSigmoid', () => {
  it('gives Φ(1) = 0.8413447460685429 (handbook tables) to 1e-10', () => {
    expect(Math.abs(quick(1) - 0.8413447460685429)).toBeLessThan(1e-10);
  });

  it('agrees with the function everywhere, inside and outside its table', () => {
    fc.assert(
      fc.property(fc.double({ min: -12, max: 12, noNaN: true }), (x) => {
        expect(Math.abs(quick(x) - normalCdf(x))).toBeLessThan(1e-10);
      }),
    );
  });

  it('never falls', () => {
    let last = 0;
    for (let x = -9; x <= 9; x += 0.003) {
      const here = quick(x);
      expect(here).toBeGreaterThanOrEqual(last - 1e-15);
      last = here;
    }
  });
});
