import { setTimeout as later } from 'node:timers/promises';
import { afterEach, describe, expect, it } from 'vitest';
import type { Model } from '../app/sums/model.ts';
import { openModelPool, type ModelPool, type ModelPoolOptions } from './modelPool.ts';

/** A thread that does what the question says, in place of the model: what is tested here is who waits for whom. */
const program = `
import { parentPort, threadId } from 'node:worker_threads';
let asked = 0;
parentPort.on('message', ({ question }) => {
  asked += 1;
  const { busyMs = 0, fill, broken, exits } = question;
  const until = Date.now() + busyMs;
  while (Date.now() < until);
  if (exits) process.exit(3);
  if (broken) { parentPort.postMessage({ message: 'it broke', stack: 'at a line' }); return; }
  const kept = [];
  while (fill) kept.push(new Array(100_000).fill(String(kept.length)));
  parentPort.postMessage({ outcome: { ok: true, value: { threadId, asked } } });
});`;
const entry = new URL(`data:text/javascript,${encodeURIComponent(program)}`);

const usual = { entry, threads: 2, limitMs: 5000, limitMb: 64, waitingAtMost: 3 };
let pool: ModelPool | undefined;
afterEach(() => pool?.close());

interface Answer {
  readonly threadId: number;
  readonly asked: number;
}
const opened = (over: Partial<ModelPoolOptions> = {}) => {
  const made = openModelPool({ ...usual, ...over });
  pool = made;
  return (question: object, about?: string, gone?: AbortSignal) =>
    asking(made.modelFor(gone), question, about);
};
const asking = async (model: Model, question: object, about?: string) => {
  const ask = model.ask as unknown as (
    name: string,
    question: object,
    about?: string,
  ) => Promise<{ ok: true; value: Answer } | { ok: false; problem: { code: string } }>;
  const outcome = await ask('answerStudy', question, about);
  return outcome.ok ? outcome.value : outcome.problem.code;
};
const threadOf = (answer: Answer | string): number =>
  typeof answer === 'string' ? -1 : answer.threadId;

describe('threads for sums', () => {
  it('leave the asker free, and each other too', async () => {
    const ask = opened();
    await Promise.all([ask({ busyMs: 50 }), ask({ busyMs: 50 })]);
    const began = performance.now();
    const hard = ask({ busyMs: 1500 });
    await ask({});
    expect(performance.now() - began).toBeLessThan(700);
    expect(threadOf(await hard)).toBeGreaterThan(0);
  });

  it('go back to the one that knows the sheet, unless it is busy', async () => {
    const ask = opened();
    const [one, other] = await Promise.all([
      ask({ busyMs: 100 }, 'birch'),
      ask({ busyMs: 100 }, 'poplar'),
    ]);
    expect(threadOf(one)).not.toBe(threadOf(other));
    expect(threadOf(await ask({}, 'poplar'))).toBe(threadOf(other));
    expect(threadOf(await ask({}, 'birch'))).toBe(threadOf(one));
    const busy = ask({ busyMs: 300 }, 'birch');
    expect(threadOf(await ask({}, 'birch'))).toBe(threadOf(other));
    await busy;
  });

  it('end with a sum that takes too long, and the next is answered', async () => {
    const ask = opened({ threads: 1, limitMs: 400 });
    expect(await ask({ busyMs: 60_000 })).toBe('sum-took-too-long');
    expect(await ask({})).toMatchObject({ asked: 1 });
  });

  it('end with a sum that takes too much memory, and the next is answered', async () => {
    const ask = opened({ threads: 1, limitMs: 20_000 });
    expect(await ask({ fill: true })).toBe('sum-too-big');
    expect(await ask({})).toMatchObject({ asked: 1 });
  });

  it('refuse what would wait behind too many, and what waits too long', async () => {
    const ask = opened({ threads: 1, limitMs: 600 });
    const all = Array.from({ length: 6 }, () => ask({ busyMs: 60_000 }));
    const codes = await Promise.all(all);
    expect(codes.filter((code) => code === 'sums-waiting').length).toBeGreaterThanOrEqual(4);
    expect(codes[0]).toBe('sum-took-too-long');
  });

  it('give up what nobody waits for, begun or not', async () => {
    const ask = opened({ threads: 1, limitMs: 20_000 });
    const gone = new AbortController();
    const begun = ask({ busyMs: 60_000 }, 'birch', gone.signal);
    const waiting = ask({}, 'birch', gone.signal);
    await later(50);
    gone.abort();
    expect(await waiting).toBe('sum-not-wanted');
    expect(await begun).toBe('sum-not-wanted');
    expect(await ask({})).toMatchObject({ asked: 1 });
  });

  it('tell what broke, and survive a thread that ends by itself', async () => {
    const ask = opened({ threads: 1 });
    await expect(ask({ broken: true })).rejects.toThrow('it broke');
    await expect(ask({ exits: true })).rejects.toThrow('ended by itself');
    await expect(ask({ cannot: () => 1 })).rejects.toThrow();
    expect(await ask({})).toMatchObject({ asked: 1 });
  });

  it('stop at once in the midst of a sum', async () => {
    const ask = opened();
    const sums = [ask({ busyMs: 60_000 }), ask({ busyMs: 60_000 }), ask({})];
    await later(200);
    const began = performance.now();
    await pool?.close();
    expect(performance.now() - began).toBeLessThan(1000);
    expect(await Promise.all(sums)).toEqual(sums.map(() => 'sum-not-wanted'));
    expect(await ask({})).toBe('sum-not-wanted');
  });
});
