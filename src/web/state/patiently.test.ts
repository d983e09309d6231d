import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { patiently } from './patiently.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('a part of the page that cannot be fetched yet', () => {
  it('is asked for again until it comes, and then no more', async () => {
    let tries = 0;
    const fetchPart = () => {
      tries += 1;
      return tries < 4 ? Promise.reject(new TypeError('away')) : Promise.resolve('the part');
    };
    const part = patiently(fetchPart);
    await vi.advanceTimersByTimeAsync(10_000);
    expect(await part).toBe('the part');
    expect(tries).toBe(4);
  });

  it('is fetched once where it comes at once', async () => {
    const fetchPart = vi.fn(() => Promise.resolve(7));
    expect(await patiently(fetchPart)).toBe(7);
    expect(fetchPart).toHaveBeenCalledTimes(1);
  });
});
