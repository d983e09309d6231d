import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openPairing, tokenHours } from './pairing.ts';

const key = new Uint8Array(32).fill(7);

/** A pairing whose clock is set by hand, in minutes. */
const withClock = (over: { key?: Uint8Array } = {}) => {
  let minutes = 0;
  const start = Date.parse('2031-05-06T07:00:00.000Z');
  const now = () => new Date(start + minutes * 60_000).toISOString();
  const pairing = openPairing({ key: over.key ?? key, now });
  return { pairing, after: (more: number) => void (minutes += more) };
};

const redeemed = (pairing: ReturnType<typeof openPairing>): string => {
  const token = pairing.redeem(pairing.code().code);
  if (!token.ok) throw new Error('refused');
  return token.value;
};

describe('pairing', () => {
  it('gives a token for the code, once', () => {
    const { pairing } = withClock();
    const { code } = pairing.code();
    expect(code).toMatch(/^\d{6}$/);
    const token = pairing.redeem(` ${code.slice(0, 3)} ${code.slice(3)}`);
    expect(token.ok && pairing.accepts(token.value)).toBe(true);
    expect(pairing.redeem(code).ok).toBe(false);
    expect(pairing.code().code).not.toBe(code);
  });

  it('forgets a code after ten minutes, and after ten wrong tries', () => {
    const { pairing, after } = withClock();
    const first = pairing.code().code;
    after(9);
    expect(pairing.code().code).toBe(first);
    after(1);
    const second = pairing.code().code;
    expect(pairing.redeem(first).ok).toBe(false);
    for (let tries = 0; tries < 9; tries += 1) pairing.redeem('guess');
    expect(pairing.redeem(second).ok).toBe(false);
  });

  it('lets a phone in for a working day', () => {
    const { pairing, after } = withClock();
    const token = redeemed(pairing);
    after(tokenHours * 60 - 1);
    expect(pairing.accepts(token)).toBe(true);
    after(1);
    expect(pairing.accepts(token)).toBe(false);
  });

  it('knows its tokens again after a new start, and no other server’s', () => {
    const token = redeemed(withClock().pairing);
    expect(withClock().pairing.accepts(token)).toBe(true);
    expect(withClock({ key: new Uint8Array(32) }).pairing.accepts(token)).toBe(false);
  });

  it('accepts nothing made up, nor a token with another time', () => {
    const { pairing } = withClock();
    const token = redeemed(pairing);
    expect(pairing.accepts(token.replace('2031', '2099'))).toBe(false);
    expect(pairing.accepts('')).toBe(false);
    fc.assert(
      fc.property(fc.string(), (made) => {
        expect(pairing.accepts(made)).toBe(false);
      }),
    );
  });
});
