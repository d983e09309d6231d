import { describe, expect, it } from 'vitest';
import { undescribedMachine } from '../../core/machine/machine.ts';
import { wholeJobTime } from '../../core/motion/jobTime.ts';
import { jobsToTime } from '../../core/motion/timedJobs.ts';
import { assumedMotion } from '../../core/motion/timeBand.ts';
import { answerMotion } from './answerMotion.ts';

const jobs = jobsToTime(undescribedMachine).map(({ moves }) => ({
  moves,
  seconds: wholeJobTime(moves, assumedMotion.likely).seconds,
}));

describe('the thread that works out how a machine moves', () => {
  it('gives back what jobs tell, or why they tell nothing; both can be sent between threads', () => {
    const told = structuredClone(answerMotion(jobs));
    if (told.kind !== 'fitted' || !told.fit.ok) throw new Error('nothing was told');
    expect(told.fit.value.motion.travelSpeedMmPerS / 200).toBeCloseTo(1, 1);
    expect(structuredClone(answerMotion(jobs.slice(0, 2)))).toMatchObject({
      kind: 'fitted',
      fit: { ok: false, problem: { code: 'motion-too-few-jobs' } },
    });
  });
});
