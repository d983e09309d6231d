import { describe, expect, it } from 'vitest';
import { undescribedMachine } from '../../core/machine/machine.ts';
import { fitMotion } from '../../core/motion/fitMotion.ts';
import { wholeJobTime } from '../../core/motion/jobTime.ts';
import { assumedMotion } from '../../core/motion/timeBand.ts';
import { jobsToTime } from '../../core/motion/timedJobs.ts';
import { answerCalls } from './answerCalls.ts';
import type { Reply } from './calls.ts';

const jobs = jobsToTime(undescribedMachine).map(({ moves }) => ({
  moves,
  seconds: wholeJobTime(moves, assumedMotion.likely).seconds,
}));

describe('a thread', () => {
  it('answers by the number of the question; question and answer can be sent between threads', async () => {
    const answer = answerCalls({ motion: (asked) => fitMotion(asked) });
    const said: Reply[] = [];
    const ask = (id: number, question: unknown): Promise<void> =>
      answer(structuredClone({ id, call: 'motion', question }), (reply) =>
        said.push(structuredClone(reply)),
      );
    await ask(7, jobs);
    await ask(8, jobs.slice(0, 2));
    expect(said).toMatchObject([
      { id: 7, kind: 'answer', answer: { ok: true } },
      { id: 8, kind: 'answer', answer: { ok: false, problem: { code: 'motion-too-few-jobs' } } },
    ]);
    expect(said[0]).toMatchObject({ answer: structuredClone(fitMotion(jobs)) });
  });

  it('says its stages before the answer, and what broke instead of one', async () => {
    const answer = answerCalls({
      prove: (_, tell) => {
        tell('reading');
        throw new Error('a bug');
      },
    });
    const said: Reply[] = [];
    await answer({ id: 3, call: 'prove', question: {} }, (reply) => said.push(reply));
    expect(said).toEqual([
      { id: 3, kind: 'stage', stage: 'reading' },
      { id: 3, kind: 'broke', message: 'a bug' },
    ]);
  });
});
