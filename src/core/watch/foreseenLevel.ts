import { normalQuantile } from '../../num/normal.ts';
import type { Foreseen } from './watched.ts';

/**
 * What was believed of the level when a setting was kept. The level k is the margin in units of the scatter, so that
 * Φ(k) of the sound parts come out: k ~ N(mean, sd²).
 */
export interface ForeseenLevel {
  readonly mean: number;
  readonly sd: number;
}

/** Nobody knows a level better than that after one card, nor so badly. Common practice, no source. */
const [leastSd, mostSd] = [0.12, 1.2];

/**
 * The normal belief about the level that says what the book says: E[Φ(k)] is the share foreseen, and Pr[Φ(k) ≥ r] how
 * sure the promise r was. With t = 1/sd, q = Φ⁻¹(share) and p = Φ⁻¹(r) the second is q·√(1 + t²) − p·t, which falls to
 * √(q² − p²) and then rises: of two beliefs that fit the narrower is taken; where none does, the one that comes nearest.
 */
export const foreseenLevel = ({ outOf100Mean, surePct, promise }: Foreseen): ForeseenLevel => {
  const q = normalQuantile(inside(outOf100Mean / 100));
  const p = normalQuantile(inside(promise.outOf100 / 100));
  const wanted = normalQuantile(inside(surePct / 100));
  const sure = (t: number): number => q * Math.sqrt(1 + t * t) - p * t;
  const lowest = q > p && p > 0 ? p / Math.sqrt(q * q - p * p) : 1 / mostSd;
  let [low, high] = [Math.min(Math.max(lowest, 1 / mostSd), 1 / leastSd), 1 / leastSd];
  const rises = sure(high) > sure(low);
  for (let step = 0; step < 60; step += 1) {
    const middle = 0.5 * (low + high);
    if (sure(middle) < wanted === rises) low = middle;
    else high = middle;
  }
  const sd = 1 / low;
  return { mean: q * Math.sqrt(1 + sd * sd), sd };
};

/** A share that was foreseen as all or none is one that nobody can tell from that. */
const inside = (share: number): number => Math.min(0.9995, Math.max(0.0005, share));
