import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Setting } from '../machine/setting.ts';
import { defaultPromise } from '../reading/promise.ts';
import type { OrderSeen, StandingEvidence, StripSeen } from './evidence.ts';
import { rankOf, standingKinds } from './standing.ts';
import { standingOf } from './standingOf.ts';

const setting: Setting = { powerPct: 30, speedMmPerS: 12, passes: 1 };
const promise = { ...defaultPromise, partLengthMm: 180 };
const kept = { setting, promise, outOf100Mean: 98.6, surePct: 96 };
const reach = {
  cut: [
    { powerPct: 30, speedMmPerS: 8, passes: 1 },
    { powerPct: 30, speedMmPerS: 18, passes: 1 },
  ],
  out: [{ powerPct: 30, speedMmPerS: 15, passes: 1 }],
};

const evidence = (over: Partial<StandingEvidence> = {}): StandingEvidence => ({
  kept,
  promise,
  orders: [],
  strips: [],
  reach,
  isChartAlarmed: false,
  ...over,
});

const order = (
  day: number,
  notOut: number,
  parts: number,
  speedMmPerS = setting.speedMmPerS,
): OrderSeen => ({
  id: `order-${String(day)}`,
  at: `2025-05-${String(day).padStart(2, '0')}T10:00:00.000Z`,
  setting: { ...setting, speedMmPerS },
  out: parts - notOut,
  hangs: notOut,
  stays: 0,
  spoilt: 0,
  partLengthMm: 180,
});

const strip = (day: number, verdict: StripSeen['verdict']): StripSeen => ({
  code: 'S7R2',
  at: `2025-05-${String(day).padStart(2, '0')}T12:00:00.000Z`,
  of: 'new-batch',
  verdict,
});

const asBefore = { kind: 'as-before', setting, surePct: 80, allOut: false } as const;
const slower = {
  kind: 'retune',
  setting: { ...setting, speedMmPerS: 10.6 },
  surePct: 86,
  which: 'slower',
  provenSurePct: 30,
  guess: false,
} as const;

describe('how a kept setting stands', () => {
  it('holds by its cards alone as long as nothing was counted', () => {
    const standing = standingOf(evidence());
    expect(standing).toMatchObject({ kind: 'holds', run: setting, isGuess: false });
    expect(standing.why.code).toBe('by-cards-alone');
  });

  it('is not sent slower where slower welds back, and asks for a card', () => {
    const answer = { recommended: setting, isGuess: false, holdsAtKeptMmPerS: 12 };
    const bad = [order(2, 12, 200)];
    const weldsFrom = (staysOpenFromMmPerS: number) =>
      standingOf(evidence({ orders: bad, answer: { ...answer, staysOpenFromMmPerS } }));
    const near = weldsFrom(11.4);
    expect(near.why).toEqual({
      code: 'failed-where-slower-welds',
      params: { notOut: 12, parts: 200, allowedFor: 6, speedMmPerS: 12, slowestMmPerS: 11.4 },
    });
    expect([near.kind, near.next, near.run?.speedMmPerS]).toEqual(['failed', 'cut-card', 11.4]);
    // Where one step slower still stays open, it is what it was.
    expect(weldsFrom(10)).toEqual(standingOf(evidence({ orders: bad, answer })));
    // Nor is it ever sent faster.
    expect(weldsFrom(13).run?.speedMmPerS).toBe(12);
  });

  it('says that it welds where no speed holds any more for that, and names the best that is known', () => {
    const answer = { recommended: null, isGuess: false, holdsAtKeptMmPerS: null };
    const standing = standingOf(evidence({ answer: { ...answer, staysOpenFromMmPerS: 11.2 } }));
    expect(standing.why).toEqual({
      code: 'no-answer-since-it-welds',
      params: { bestMmPerS: 11.2 },
    });
    expect([standing.next, standing.run?.speedMmPerS]).toEqual(['cut-card', 11.2]);
  });

  it('failed with 12 of 200 not out, and is run one step slower until it is checked', () => {
    // 3 in 100 of 200 are 6; twelve or more come by luck in 2 of 100 such orders (binomial).
    const standing = standingOf(evidence({ orders: [order(2, 12, 200)] }));
    expect(standing.kind).toBe('failed');
    expect(standing.why).toEqual({
      code: 'order-failed',
      params: { notOut: 12, parts: 200, allowedFor: 6, speedMmPerS: 12 },
    });
    expect(standing.run?.speedMmPerS).toBe(11);
    expect(standing.next).toBe('cut-strip');
  });

  it('failed where a good order of 300 is followed by 20 of 200', () => {
    const standing = standingOf(evidence({ orders: [order(2, 0, 300), order(9, 20, 200)] }));
    expect(standing).toMatchObject({ kind: 'failed', why: { code: 'orders-since-failed' } });
  });

  it('is to be watched, still slower, once a strip came out after the bad order', () => {
    const orders = [order(2, 12, 200)];
    const checked = standingOf(evidence({ orders, strips: [strip(3, asBefore)] }));
    expect(checked).toMatchObject({ kind: 'watch-it', run: { speedMmPerS: 11 } });
    // A strip of before the order says nothing of it.
    expect(standingOf(evidence({ orders, strips: [strip(1, asBefore)] })).kind).toBe('failed');
  });

  it('goes by the strip that says slower, and by the order that came out since', () => {
    const strips = [strip(3, slower)];
    expect(standingOf(evidence({ strips }))).toMatchObject({
      kind: 'failed',
      run: { speedMmPerS: 10.6 },
    });
    expect(standingOf(evidence({ strips, orders: [order(5, 0, 120)] })).kind).toBe('watch-it');
  });

  it('never runs faster for a strip that would go faster', () => {
    const faster = {
      ...slower,
      which: 'faster' as const,
      setting: { ...setting, speedMmPerS: 14 },
    };
    expect(standingOf(evidence({ strips: [strip(3, faster)] })).run).toEqual(setting);
  });

  it('takes an order that was cut slower and failed for its own failure, and a faster one for none', () => {
    expect(standingOf(evidence({ orders: [order(2, 30, 200, 10)] }))).toMatchObject({
      kind: 'failed',
      run: { speedMmPerS: 9.5 },
    });
    expect(standingOf(evidence({ orders: [order(2, 30, 200, 14)] })).kind).toBe('holds');
  });

  it('goes by what the cards say now, where they say less', () => {
    const answer = { recommended: setting, isGuess: false, holdsAtKeptMmPerS: 11.7 };
    expect(standingOf(evidence({ answer }))).toMatchObject({
      kind: 'watch-it',
      run: { speedMmPerS: 11.7 },
    });
    const far = { ...answer, holdsAtKeptMmPerS: 9.84 };
    expect(standingOf(evidence({ answer: far }))).toMatchObject({
      kind: 'failed',
      run: { speedMmPerS: 9.8 },
    });
  });

  it('says guess outside what was cut, and an order cut there makes it none', () => {
    const narrow = { cut: reach.cut.slice(1), out: reach.cut.slice(1) };
    const standing = standingOf(evidence({ reach: narrow }));
    expect(standing).toMatchObject({
      kind: 'not-known',
      isGuess: true,
      next: 'card-that-reaches',
      why: { code: 'outside-what-was-cut' },
    });
  });

  it('counts by the length of the part: 600 mm may fail more often than 60 mm', () => {
    const short = { ...promise, partLengthMm: 60 };
    const long = { ...order(2, 40, 200), partLengthMm: 600 };
    // 1 − .97^10 = 26 of 100 parts of ten lengths may fail: 52 of 200.
    expect(standingOf(evidence({ promise: short, orders: [long] })).kind).toBe('holds');
    expect(
      standingOf(evidence({ promise: short, orders: [{ ...long, partLengthMm: 60 }] })).kind,
    ).toBe('failed');
    expect(
      standingOf(evidence({ promise: { ...promise, partLengthMm: 600 }, orders: [long] })).kind,
    ).toBe('failed');
  });
});

describe('how a sheet stands of which nothing was kept', () => {
  const bare = (over: Partial<StandingEvidence> = {}): StandingEvidence => ({
    promise,
    orders: [],
    strips: [],
    reach,
    isChartAlarmed: false,
    ...over,
  });
  const answer = { recommended: setting, isGuess: false, holdsAtKeptMmPerS: null };

  it('is not known without an answer', () => {
    expect(standingOf(bare())).toMatchObject({ kind: 'not-known', next: 'cut-card' });
    expect(standingOf(bare()).run).toBeUndefined();
  });

  it('is not known while its card is read in part', () => {
    const halfRead = { read: 11, cells: 25 };
    expect(standingOf(bare({ answer, halfRead }))).toMatchObject({
      kind: 'not-known',
      run: setting,
      next: 'finish-reading',
      why: { params: { left: 14 } },
    });
  });

  it('failed where the last order failed at a faster speed, until one at this speed came out', () => {
    const bad = order(2, 12, 200, 14);
    expect(standingOf(bare({ answer, orders: [bad] }))).toMatchObject({
      kind: 'failed',
      run: setting,
      why: { code: 'run-before-failed', params: { speedMmPerS: 14 } },
    });
    expect(standingOf(bare({ answer, orders: [bad, order(3, 1, 150)] })).kind).toBe('holds');
  });
});

describe('whatever the evidence', () => {
  const verdicts = fc.constantFrom<StripSeen['verdict']>(
    asBefore,
    slower,
    { ...slower, which: 'faster', setting: { ...setting, speedMmPerS: 13.5 } },
    { kind: 'cut-a-card', provenSurePct: 40 },
  );
  const orders = fc.array(
    fc
      .tuple(
        fc.integer({ min: 1, max: 28 }),
        fc.integer({ min: 1, max: 400 }),
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        fc.constantFrom(10, 11, 12, 12, 12, 13.5),
      )
      .map(([day, parts, share, speed]) => order(day, Math.round(parts * share), parts, speed)),
    { maxLength: 5 },
  );
  const whatever = fc
    .record({
      orders,
      strips: fc.array(fc.tuple(fc.integer({ min: 1, max: 28 }), verdicts), { maxLength: 3 }),
      isKept: fc.boolean(),
      holds: fc.option(fc.double({ min: 6, max: 15, noNaN: true })),
      isAsked: fc.boolean(),
      isGuess: fc.boolean(),
      isChartAlarmed: fc.boolean(),
      isHalfRead: fc.boolean(),
    })
    .map(({ isKept, holds, isAsked, isGuess, isHalfRead, strips, ...rest }): StandingEvidence => {
      const answer = {
        recommended:
          holds === null ? null : { ...setting, speedMmPerS: Math.floor(holds * 10) / 10 },
        isGuess,
        holdsAtKeptMmPerS: holds,
      };
      return {
        promise,
        reach,
        ...rest,
        orders: [...rest.orders].sort((a, b) => (a.at < b.at ? -1 : 1)),
        strips: strips
          .map(([day, verdict]) => strip(day, verdict))
          .sort((a, b) => (a.at < b.at ? -1 : 1)),
        ...(isKept ? { kept } : {}),
        ...(isAsked || !isKept ? { answer } : {}),
        ...(isHalfRead ? { halfRead: { read: 3, cells: 8 } } : {}),
      };
    });

  it('there is one standing, with one speed where there is any, never faster than what was kept or answered', () => {
    fc.assert(
      fc.property(whatever, (seen) => {
        const { kind, run } = standingOf(seen);
        expect(standingKinds).toContain(kind);
        const most = seen.kept?.setting ?? seen.answer?.recommended;
        if (run === undefined) expect(most ?? null).toBeNull();
        else expect(run.speedMmPerS).toBeLessThanOrEqual(most?.speedMmPerS ?? 0);
        if (kind === 'holds') expect(run).toEqual(most);
      }),
      { numRuns: 3000 },
    );
  });

  it('worse evidence gives neither a better standing nor a faster speed', () => {
    fc.assert(
      fc.property(
        whatever,
        fc.nat(),
        fc.integer({ min: 1, max: 60 }),
        fc.constantFrom('order', 'strip', 'answer', 'chart'),
        (seen, which, more, what) => {
          const before = standingOf(seen);
          const after = standingOf(worsened(seen, { which, more, what }));
          // Where nothing was kept another answer is another setting, with a standing of its own.
          if (what !== 'answer' || seen.kept !== undefined)
            expect(rankOf(after.kind)).toBeLessThanOrEqual(rankOf(before.kind));
          if (before.run !== undefined && after.run !== undefined)
            expect(after.run.speedMmPerS).toBeLessThanOrEqual(before.run.speedMmPerS);
        },
      ),
      { numRuns: 4000 },
    );
  });

  it('a setting whose orders fail is never run at its own speed, nor called one that holds', () => {
    fc.assert(
      fc.property(whatever, fc.integer({ min: 100, max: 5000 }), (seen, parts) => {
        const bad = order(28, Math.ceil(0.12 * parts), parts);
        const { kind, run } = standingOf({ ...seen, kept, orders: [...seen.orders, bad] });
        expect(kind).not.toBe('holds');
        expect(run?.speedMmPerS).toBeLessThan(setting.speedMmPerS);
      }),
      { numRuns: 1000 },
    );
  });

  const worsened = (
    seen: StandingEvidence,
    { which, more, what }: { readonly which: number; readonly more: number; readonly what: string },
  ): StandingEvidence => {
    switch (what) {
      case 'order':
        return {
          ...seen,
          orders: seen.orders.map((one, i) => {
            if (i !== which % Math.max(1, seen.orders.length)) return one;
            const moved = Math.min(more, one.out);
            return { ...one, out: one.out - moved, hangs: one.hangs + moved };
          }),
        };
      case 'strip':
        return {
          ...seen,
          strips: seen.strips.map((one, i) =>
            i === which % Math.max(1, seen.strips.length) && one.verdict.kind === 'as-before'
              ? { ...one, verdict: slower }
              : one,
          ),
        };
      case 'answer': {
        const { answer } = seen;
        if (answer?.holdsAtKeptMmPerS == null || answer.recommended === null) return seen;
        const holds = answer.holdsAtKeptMmPerS * (1 - more / 200);
        return {
          ...seen,
          answer: {
            ...answer,
            holdsAtKeptMmPerS: holds,
            recommended: { ...answer.recommended, speedMmPerS: Math.floor(holds * 10) / 10 },
          },
        };
      }
      default:
        return { ...seen, isChartAlarmed: true };
    }
  };
});
