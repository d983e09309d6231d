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
});
