import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { goneOrAfter } from './patience.ts';

const over = (signal: AbortSignal): Promise<unknown> =>
  new Promise((resolve) => signal.addEventListener('abort', () => resolve('over')));

describe('patience', () => {
  it('ends when whoever asked has gone, whatever is left of it', () => {
    const gone = new AbortController();
    const patient = goneOrAfter(gone.signal, 1e6);
    expect(patient.aborted).toBe(false);
    gone.abort();
    expect(patient.aborted).toBe(true);
  });

  it('ends by itself', async () => {
    expect(await over(goneOrAfter(new AbortController().signal, 1))).toBe('over');
  });

  it('ends by itself also where nobody listened while garbage was collected', async () => {
    setFlagsFromString('--expose-gc');
    const collect = runInNewContext('gc') as () => void;
    const gone = new AbortController();
    const patients = Array.from({ length: 20 }, () => goneOrAfter(gone.signal, 300));
    for (let times = 0; times < 3; times += 1) {
      collect();
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    await expect.poll(() => patients.filter(({ aborted }) => aborted).length).toBe(20);
  });

  it('is over at once for whoever has gone already', () => {
    expect(goneOrAfter(AbortSignal.abort(), 1e6).aborted).toBe(true);
  });
});
