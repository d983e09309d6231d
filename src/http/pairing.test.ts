import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sampleTime } from '../../test/samples/studies.ts';
import { openStore } from '../store/openStore.ts';
import { idleDays, openPairing, type PairingCode } from './pairing.ts';

let folder: string;
let store: Awaited<ReturnType<typeof openStore>>;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-pairing-'));
  store = await openStore({ kind: 'file', file: join(folder, 'w.sqlite') }, sampleTime);
});
afterEach(async () => {
  await store.close();
  rmSync(folder, { recursive: true, force: true });
});

/** A pairing whose clock is set by hand, in minutes. */
const withClock = () => {
  let minutes = 0;
  const told: PairingCode[] = [];
  const start = Date.parse('2031-05-06T07:00:00.000Z');
  const options = {
    now: () => new Date(start + minutes * 60_000).toISOString(),
    kept: store.phones,
    paused: (next: PairingCode) => void told.push(next),
  };
  return {
    pairing: openPairing(options),
    startedAnew: () => openPairing(options),
    after: (more: number) => void (minutes += more),
    kept: () =>
      ['', '-wal'].map((end) => readFileSync(join(folder, `w.sqlite${end}`), 'latin1')).join(''),
    told,
  };
};
type Opened = ReturnType<typeof withClock>['pairing'];

const redeemed = async (pairing: Opened, name = 'bench'): Promise<string> => {
  const token = await pairing.redeem((await pairing.open()).code, name);
  if (!token.ok) throw new Error('refused');
  return token.value;
};
const codeOf = (outcome: Awaited<ReturnType<Opened['redeem']>>) =>
  outcome.ok ? 'let in' : outcome.problem.code;
const wrongFor = (code: string) => (code === '000000' ? '111111' : '000000');
const miss = async (pairing: Opened, times: number): Promise<void> => {
  for (let tries = 0; tries < times; tries += 1) {
    const state = await pairing.state();
    await pairing.redeem(wrongFor(state.kind === 'open' ? state.code.code : ''), 'x');
  }
};

describe('pairing', () => {
  it('is closed until someone at the desk asks, and again after one phone', async () => {
    const { pairing } = withClock();
    expect(await pairing.state()).toEqual({ kind: 'closed' });
    expect(codeOf(await pairing.redeem('000000', 'x'))).toBe('pairing-not-open');
    const { code } = await pairing.open();
    expect(code).toMatch(/^\d{6}$/);
    expect((await pairing.open()).code).toBe(code);
    const token = await pairing.redeem(` ${code.slice(0, 3)} ${code.slice(3)}`, 'bench');
    expect(token.ok && (await pairing.phoneOf(token.value))?.name).toBe('bench');
    expect(codeOf(await pairing.redeem(code, 'x'))).toBe('pairing-not-open');
    expect(await pairing.state()).toEqual({ kind: 'closed' });
  });

  it('forgets a code after ten minutes', async () => {
    const { pairing, after } = withClock();
    const { code } = await pairing.open();
    after(9);
    expect((await pairing.state()).kind).toBe('open');
    after(1);
    expect(codeOf(await pairing.redeem(code, 'x'))).toBe('pairing-not-open');
  });

  it('pauses after ten misses in all and tells the next code to the terminal alone', async () => {
    const { pairing, after, told } = withClock();
    const { code } = await pairing.open();
    await miss(pairing, 9);
    expect((await pairing.state()).kind).toBe('open');
    await miss(pairing, 1);
    expect((await pairing.state()).kind).toBe('paused');
    expect(codeOf(await pairing.redeem(code, 'x'))).toBe('pairing-not-open');
    expect(told).toHaveLength(1);
    expect(codeOf(await pairing.redeem(told[0]?.code ?? '', 'x'))).toBe('pairing-not-open');
    after(10);
    expect(codeOf(await pairing.redeem(told[0]?.code ?? '', 'x'))).toBe('let in');
  });

  it('closes after another ten misses, until the desk asks', async () => {
    const { pairing, after, told } = withClock();
    await pairing.open();
    await miss(pairing, 10);
    after(10);
    await miss(pairing, 10);
    expect((await pairing.state()).kind).toBe('closed');
    expect(told).toHaveLength(1);
    expect(codeOf(await pairing.redeem((await pairing.open()).code, 'x'))).toBe('let in');
  });

  it('ends a pause when the desk asks', async () => {
    const { pairing } = withClock();
    await pairing.open();
    await miss(pairing, 10);
    expect(codeOf(await pairing.redeem((await pairing.open()).code, 'x'))).toBe('let in');
  });

  it('lets a phone in as long as it is used, also after a new start', async () => {
    const { pairing, startedAnew, after } = withClock();
    const token = await redeemed(pairing);
    for (let month = 0; month < 24; month += 1) {
      after(30 * 24 * 60);
      expect((await pairing.phoneOf(token))?.name).toBe('bench');
    }
    expect((await startedAnew().phoneOf(token))?.name).toBe('bench');
    after(idleDays * 24 * 60);
    expect(await pairing.phoneOf(token)).toBeUndefined();
    expect(await pairing.phones()).toEqual([]);
  });

  it('puts one phone out and leaves the other in', async () => {
    const { pairing } = withClock();
    const [one, other] = [await redeemed(pairing, 'one'), await redeemed(pairing, 'other')];
    expect(await pairing.remove((await pairing.phoneOf(one))?.id ?? '')).toBe(true);
    expect(await pairing.remove('nobody')).toBe(false);
    expect(await pairing.phoneOf(one)).toBeUndefined();
    expect((await pairing.phoneOf(other))?.name).toBe('other');
  });

  it('keeps no token, only its hash, and accepts nothing made up', async () => {
    const { pairing, kept } = withClock();
    const token = await redeemed(pairing);
    expect(kept()).not.toContain(token);
    await fc.assert(
      fc.asyncProperty(fc.string(), async (made) => {
        expect(await pairing.phoneOf(made)).toBeUndefined();
      }),
    );
  });

  it('goes on where a store takes no changes: a phone looks all the same', async () => {
    const { pairing, after } = withClock();
    const token = await redeemed(pairing);
    const refusing = openPairing({
      kept: {
        ...store.phones,
        change: () =>
          Promise.reject(
            Object.assign(new Error('x'), { problem: { code: 'store-takes-no-changes' } }),
          ),
      },
      now: () => '2031-05-06T10:00:00.000Z',
      paused: () => undefined,
    });
    after(180);
    expect((await refusing.phoneOf(token))?.name).toBe('bench');
  });
});

describe('several programs at work in one workshop', () => {
  it('share the code, the misses and the phones', async () => {
    const { pairing, startedAnew } = withClock();
    const other = startedAnew();
    const { code } = await pairing.open();
    expect((await other.open()).code).toBe(code);
    await miss(pairing, 5);
    await miss(other, 4);
    expect((await pairing.state()).kind).toBe('open');
    await miss(other, 1);
    expect((await pairing.state()).kind).toBe('paused');
    const token = await redeemed(other);
    const phone = await pairing.phoneOf(token);
    expect(await pairing.remove(phone?.id ?? '')).toBe(true);
    expect(await other.phoneOf(token)).toBeUndefined();
  });

  it('let one phone in by one code, however many type it at once', async () => {
    const { pairing, startedAnew } = withClock();
    const { code } = await pairing.open();
    const both = await Promise.all(
      [pairing, startedAnew(), startedAnew()].map((one) => one.redeem(code, 'x')),
    );
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    expect(await pairing.phones()).toHaveLength(1);
  });
});
