import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { links } from './links.ts';

describe.each(links)('link $name', (link) => {
  it('has its upper quartile at 0.6745, as the normal (definition of the scaling)', () => {
    expect(link.cdf(0.6744897501960817)).toBeCloseTo(0.75, 10);
  });

  it('is symmetric, and its density is its slope', () => {
    fc.assert(
      fc.property(fc.double({ min: -7, max: 7, noNaN: true }), (x) => {
        expect(link.cdf(x) + link.cdf(-x)).toBeCloseTo(1, 10);
        const h = 1e-5;
        expect((link.cdf(x + h) - link.cdf(x - h)) / (2 * h)).toBeCloseTo(link.pdf(x), 6);
        expect(Math.abs(link.quickCdf(x) - link.cdf(x))).toBeLessThan(1e-9);
      }),
    );
  });
});

it('orders the tails: Student above logistic above normal', () => {
  const [normal, logistic, student] = links.map((link) => link.cdf(-4));
  expect(student).toBeGreaterThan(logistic ?? 1);
  expect(logistic).toBeGreaterThan(normal ?? 1);
});
