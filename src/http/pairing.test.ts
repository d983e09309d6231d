import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { idleDays, openPairing, type PairedPhone, type PairingCode } from './pairing.ts';

/** A pairing whose clock is set by hand, in minutes, and whose list is kept as if on a disk. */
const withClock = () => {
  let minutes = 0;
  let kept: readonly PairedPhone[] = [];
  const told: PairingCode[] = [];
  const start = Date.parse('2031-05-06T07:00:00.000Z');
  const options = {
    now: () => new Date(start + minutes * 60_000).toISOString(),
    list: { read: () => kept, write: (phones: readonly PairedPhone[]) => void (kept = phones) },
    paused: (next: PairingCode) => void told.push(next),
  };
  return {
    pairing: openPairing(options),
    startedAnew: () => openPairing(options),
    after: (more: number) => void (minutes += more),
    kept: () => JSON.stringify(kept),
    told,
  };
};
type Opened = ReturnType<typeof withClock>['pairing'];

const redeemed = (pairing: Opened, name = 'bench'): string => {
  const token = pairing.redeem(pairing.open().code, name);
  if (!token.ok) throw new Error('refused');
  return token.value;
};
const codeOf = (outcome: ReturnType<Opened['redeem']>) =>
  outcome.ok ? 'let in' : outcome.problem.code;
const wrongFor = (code: string) => (code === '000000' ? '111111' : '000000');
const miss = (pairing: Opened, times: number): void => {
  for (let tries = 0; tries < times; tries += 1) {
    const state = pairing.state();
    pairing.redeem(wrongFor(state.kind === 'open' ? state.code.code : ''), 'x');
  }
};

describe('pairing', () => {
  it('is closed until someone at the desk asks, and again after one phone', () => {
    const { pairing } = withClock();
    expect(pairing.state()).toEqual({ kind: 'closed' });
    expect(codeOf(pairing.redeem('000000', 'x'))).toBe('pairing-not-open');
    const { code } = pairing.open();
    expect(code).toMatch(/^\d{6}$/);
    expect(pairing.open().code).toBe(code);
    const token = pairing.redeem(` ${code.slice(0, 3)} ${code.slice(3)}`, 'bench');
    expect(token.ok && pairing.phoneOf(token.value)?.name).toBe('bench');
    expect(codeOf(pairing.redeem(code, 'x'))).toBe('pairing-not-open');
    expect(pairing.state()).toEqual({ kind: 'closed' });
  });

  it('forgets a code after ten minutes', () => {
    const { pairing, after } = withClock();
    const { code } = pairing.open();
    after(9);
    expect(pairing.state().kind).toBe('open');
    after(1);
    expect(codeOf(pairing.redeem(code, 'x'))).toBe('pairing-not-open');
  });

  it('pauses after ten misses in all and tells the next code to the terminal alone', () => {
    const { pairing, after, told } = withClock();
    const { code } = pairing.open();
    miss(pairing, 9);
    expect(pairing.state().kind).toBe('open');
    miss(pairing, 1);
    expect(pairing.state().kind).toBe('paused');
    expect(codeOf(pairing.redeem(code, 'x'))).toBe('pairing-not-open');
    expect(told).toHaveLength(1);
    expect(codeOf(pairing.redeem(told[0]?.code ?? '', 'x'))).toBe('pairing-not-open');
    after(10);
    expect(codeOf(pairing.redeem(told[0]?.code ?? '', 'x'))).toBe('let in');
  });

  it('closes after another ten misses, until the desk asks', () => {
    const { pairing, after, told } = withClock();
    pairing.open();
    miss(pairing, 10);
    after(10);
    miss(pairing, 10);
    expect(pairing.state().kind).toBe('closed');
    expect(told).toHaveLength(1);
    expect(codeOf(pairing.redeem(pairing.open().code, 'x'))).toBe('let in');
  });

  it('ends a pause when the desk asks', () => {
    const { pairing } = withClock();
    pairing.open();
    miss(pairing, 10);
    expect(codeOf(pairing.redeem(pairing.open().code, 'x'))).toBe('let in');
  });

  it('lets a phone in as long as it is used, also after a new start', () => {
    const { pairing, startedAnew, after } = withClock();
    const token = redeemed(pairing);
    for (let month = 0; month < 24; month += 1) {
      after(30 * 24 * 60);
      expect(pairing.phoneOf(token)?.name).toBe('bench');
    }
    expect(startedAnew().phoneOf(token)?.name).toBe('bench');
    after(idleDays * 24 * 60);
    expect(pairing.phoneOf(token)).toBeUndefined();
    expect(pairing.phones()).toEqual([]);
  });

  it('puts one phone out and leaves the other in', () => {
    const { pairing } = withClock();
    const [one, other] = [redeemed(pairing, 'one'), redeemed(pairing, 'other')];
    expect(pairing.remove(pairing.phoneOf(one)?.id ?? '')).toBe(true);
    expect(pairing.remove('nobody')).toBe(false);
    expect(pairing.phoneOf(one)).toBeUndefined();
    expect(pairing.phoneOf(other)?.name).toBe('other');
  });

  it('keeps no token, only its hash, and accepts nothing made up', () => {
    const { pairing, kept } = withClock();
    const token = redeemed(pairing);
    expect(kept()).not.toContain(token);
    fc.assert(
      fc.property(fc.string(), (made) => {
        expect(pairing.phoneOf(made)).toBeUndefined();
      }),
    );
  });
});
