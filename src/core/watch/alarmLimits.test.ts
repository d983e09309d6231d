import { describe, expect, it } from 'vitest';
import { cusumRunLength, ewmaRunLength } from '../../num/runLength.ts';
import { seededRandom } from '../../num/seededRandom.ts';
import { alarmLimits } from './alarmLimits.ts';

const { lambda, width, slack, limit, outright, ordersPerFalseAlarm } = alarmLimits;

describe('the limits of the alarm', () => {
  it('call each some once in 273 orders by their run lengths', () => {
    expect(cusumRunLength({ slack, limit, shift: 0 }).mean / 273).toBeCloseTo(1, 1);
    // One side of two: their rates add (Kemp 1961, from memory), so one side calls half as often.
    expect((2 * ewmaRunLength({ lambda, width, shift: 0 }).mean) / 273).toBeCloseTo(1, 1);
  });

  it('call all together as often as is stated, played with normal scores', () => {
    const random = seededRandom(77);
    const rounds = 3000;
    let orders = 0;
    for (let round = 0; round < rounds; round += 1) {
      let [average, shortfall, n] = [0, 0, 0];
      for (;;) {
        n += 1;
        const score = random.normal();
        average = lambda * score + (1 - lambda) * average;
        shortfall = Math.max(0, shortfall - score - slack);
        const half = width * Math.sqrt((lambda / (2 - lambda)) * (1 - (1 - lambda) ** (2 * n)));
        if (shortfall > limit || average < -half || score < -outright) break;
      }
      orders += n;
    }
    // Run lengths spread about as widely as their mean: four standard errors.
    const mean = orders / rounds;
    expect(Math.abs(mean - ordersPerFalseAlarm)).toBeLessThan((4 * mean) / Math.sqrt(rounds));
  });
});
