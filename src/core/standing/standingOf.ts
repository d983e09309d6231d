import { problemOf } from '../problem.ts';
import { oneStepSurer } from '../cutmodel/answerSpeed.ts';
import type { Setting } from '../machine/setting.ts';
import { countOrders } from './countedOrders.ts';
import type { OrderSeen, StandingEvidence, StripSeen } from './evidence.ts';
import { answerFindings, heldDown, type Finding } from './findings.ts';
import { isSameSpeed, ordersWith } from './ordersWith.ts';
import { whatOrdersSay, type OrdersSay } from './ordersSay.ts';
import { isReached } from '../cutmodel/reach.ts';
import { rankOf, type NextAct, type Standing } from './standing.ts';

/**
 * How a stock stands. Everything that is known is one finding each: the worst of them is the standing, and the speed is
 * the setting's own unless a finding holds it down. So worse evidence gives neither a better standing nor a faster speed,
 * and there is always one.
 */
export const standingOf = (evidence: StandingEvidence): Standing => {
  const { kept, answer, promise, reach } = evidence;
  const setting = kept?.setting ?? answer?.recommended ?? undefined;
  const own = setting === undefined ? [] : ordersWith(setting, evidence.orders);
  const counted = countOrders(promise, own);
  if (setting === undefined) {
    const finding = halfRead(evidence)[0] ?? nothingKnown;
    return { ...said(finding), isGuess: false, promise, counted };
  }
  const found = [
    ...byOrders(evidence, setting, own),
    ...byChart(evidence),
    ...byStrips(evidence, setting),
    ...(kept === undefined || answer === undefined ? [] : answerFindings(kept, answer)),
    ...byMissingSum(evidence, setting),
    ...byPromise(evidence, counted.borneOut),
    ...(kept === undefined ? halfRead(evidence) : []),
  ];
  const caps = found.flatMap(({ atMostMmPerS }) => atMostMmPerS ?? []);
  const speedMmPerS = heldDown(setting.speedMmPerS, caps, answer);
  const run = speedMmPerS < setting.speedMmPerS ? { ...setting, speedMmPerS } : setting;
  const isGuess =
    (reach !== undefined && !isReached(reach, run)) ||
    (kept === undefined && answer?.isGuess === true);
  const guess: readonly Finding[] = isGuess
    ? [
        {
          kind: 'not-known',
          why: problemOf('outside-what-was-cut', { speedMmPerS, powerPct: run.powerPct }),
          next: 'card-that-reaches',
        },
      ]
    : [];
  const worst = [...found, ...guess, ...inFavour(evidence, own)].reduce((a, b) =>
    rankOf(b.kind) < rankOf(a.kind) ? b : a,
  );
  return { ...said(worst), run, isGuess, promise, counted };
};

const said = ({ kind, why, next }: Finding): Pick<Standing, 'kind' | 'why' | 'next'> => ({
  kind,
  why,
  next,
});

const nothingKnown: Finding = {
  kind: 'not-known',
  why: problemOf('nothing-known'),
  next: 'cut-card',
};

const halfRead = ({ halfRead: half }: StandingEvidence): readonly Finding[] =>
  half === undefined
    ? []
    : [
        {
          kind: 'not-known',
          why: problemOf('card-half-read', {
            read: half.read,
            cells: half.cells,
            left: half.cells - half.read,
          }),
          next: 'finish-reading',
        },
      ];

/** Not faster, in as many passes or more, with as much power or more: what fails so fails at the setting too. */
const isGentler = (order: Setting, setting: Setting): boolean =>
  order.speedMmPerS <= setting.speedMmPerS + 0.05 &&
  order.powerPct >= setting.powerPct - 0.5 &&
  order.passes >= setting.passes;

const countParams = (by: { notOut: number; parts: number; allowedFor: number }) => ({
  notOut: by.notOut,
  parts: by.parts,
  allowedFor: Number(by.allowedFor.toFixed(1)),
});

const byOrders = (
  { promise, orders, strips, kept, answer }: StandingEvidence,
  setting: Setting,
  own: readonly OrderSeen[],
): readonly Finding[] => {
  const gentler = bySpeed(orders.filter((order) => isGentler(order.setting, setting)));
  const judged = [
    { speedMmPerS: setting.speedMmPerS, orders: own },
    ...gentler.filter((group) => !isSameSpeed(group.speedMmPerS, setting.speedMmPerS)),
  ].map((group) => ({ ...group, says: whatOrdersSay(promise, group.orders) }));
  return [
    ...judged.flatMap((group) => ordersFound(group, strips, answer?.staysOpenFromMmPerS)),
    ...(kept === undefined ? runBefore({ promise, orders }, setting) : []),
  ];
};

interface Judged {
  readonly speedMmPerS: number;
  readonly orders: readonly OrderSeen[];
  readonly says: OrdersSay;
}

const ordersFound = (
  { speedMmPerS, orders, says }: Judged,
  strips: readonly StripSeen[],
  slowestMmPerS = 0,
): readonly Finding[] => {
  if (says.kind === 'none' || says.kind === 'fine') return [];
  const params = { ...countParams(says.by), speedMmPerS };
  if (says.kind !== 'failed')
    return [
      says.kind === 'slipped'
        ? { kind: 'watch-it', why: problemOf('slipped-once', params), next: 'count-order' }
        : { kind: 'watch-it', why: problemOf('more-than-allowed', params), next: 'count-order' },
    ];
  const last = orders.at(-1)?.at ?? '';
  const isChecked = strips.some((strip) => strip.at > last && isGood(strip));
  const atMostMmPerS = oneStepSurer(speedMmPerS);
  if (!isChecked && atMostMmPerS < slowestMmPerS - 1e-9)
    return [
      {
        kind: 'failed',
        why: problemOf('failed-where-slower-welds', { ...params, slowestMmPerS }),
        next: 'cut-card',
        atMostMmPerS,
      },
    ];
  return isChecked
    ? [
        {
          kind: 'watch-it',
          why: problemOf('checked-since', params),
          next: 'count-order',
          atMostMmPerS,
        },
      ]
    : [
        {
          kind: 'failed',
          why: problemOf(says.lately ? 'orders-since-failed' : 'order-failed', params),
          next: 'cut-strip',
          atMostMmPerS,
        },
      ];
};

/** Where nothing was kept: what was run last failed, and nothing at this speed or a faster one was counted since. */
const runBefore = (
  { promise, orders }: Pick<StandingEvidence, 'promise' | 'orders'>,
  setting: Setting,
): readonly Finding[] => {
  const faster = bySpeed(
    orders.filter(
      (order) =>
        order.setting.speedMmPerS > setting.speedMmPerS + 0.05 &&
        whatOrdersSay(promise, ordersWith(order.setting, orders)).kind === 'failed',
    ),
  );
  return faster.flatMap((group): readonly Finding[] => {
    const last = group.orders.at(-1);
    if (last === undefined) return [];
    const isMended = orders.some(
      (order) =>
        order.at > last.at && !isGentlerOnly(order.setting, setting) && isFine(promise, order),
    );
    const by = countOrders(promise, group.orders);
    return isMended
      ? []
      : [
          {
            kind: 'failed',
            why: problemOf('run-before-failed', {
              ...countParams(by),
              speedMmPerS: group.speedMmPerS,
            }),
            next: 'count-order',
            atMostMmPerS: oneStepSurer(group.speedMmPerS),
          },
        ];
  });
};

const isGentlerOnly = (order: Setting, setting: Setting): boolean =>
  order.speedMmPerS < setting.speedMmPerS - 0.05;

const isFine = (promise: StandingEvidence['promise'], order: OrderSeen): boolean =>
  whatOrdersSay(promise, [order]).kind === 'fine';

const bySpeed = (
  orders: readonly OrderSeen[],
): readonly { readonly speedMmPerS: number; readonly orders: readonly OrderSeen[] }[] => {
  const groups = new Map<number, OrderSeen[]>();
  for (const order of orders) {
    const { speedMmPerS } = order.setting;
    groups.set(speedMmPerS, [...(groups.get(speedMmPerS) ?? []), order]);
  }
  return [...groups].map(([speedMmPerS, group]) => ({ speedMmPerS, orders: group }));
};

const byChart = ({ isChartAlarmed, kept }: StandingEvidence): readonly Finding[] =>
  isChartAlarmed && kept !== undefined
    ? [{ kind: 'watch-it', why: problemOf('worse-than-foreseen'), next: 'cut-strip' }]
    : [];

const isGood = ({ verdict }: StripSeen): boolean =>
  verdict.kind === 'as-before' || (verdict.kind === 'retune' && verdict.which === 'faster');

/** The newest strip of either sheet. An order of such a setting that came out since outweighs it in part. */
const byStrips = (
  { strips, orders, promise }: StandingEvidence,
  setting: Setting,
): readonly Finding[] =>
  (['reference', 'new-batch'] as const).flatMap((of): readonly Finding[] => {
    const strip = strips.findLast((one) => one.of === of);
    if (strip === undefined || isGood(strip)) return [];
    const since = countOrders(
      promise,
      ordersWith(setting, orders).filter(({ at }) => at > strip.at),
    );
    const isOutweighed = since.parts >= partsThatOutweigh && since.notOut <= since.allowedFor;
    const kind = isOutweighed ? 'watch-it' : 'failed';
    const params = { strip: strip.code, of: strip.of };
    const { verdict } = strip;
    return verdict.kind === 'retune'
      ? [
          {
            kind,
            why: problemOf('strip-says-slower', params),
            next: 'count-order',
            atMostMmPerS: verdict.setting.speedMmPerS,
          },
        ]
      : [
          {
            kind,
            why: problemOf('strip-does-not-tell', params),
            next: 'cut-card',
            atMostMmPerS: oneStepSurer(setting.speedMmPerS),
          },
        ];
  });

/** A strip has six shapes: an order of so many parts says more. */
const partsThatOutweigh = 30;

/** Something was said since that nobody could weigh in time: it is not known, and no speed is to be trusted to the full. */
const byMissingSum = (
  { isSumMissing }: StandingEvidence,
  { speedMmPerS }: Setting,
): readonly Finding[] =>
  isSumMissing === true
    ? [
        {
          kind: 'not-known',
          why: problemOf('not-worked-out'),
          next: 'count-order',
          atMostMmPerS: oneStepSurer(speedMmPerS),
        },
      ]
    : [];

/** Kept by a person who was told that it is less sure than was asked for. */
const byPromise = ({ kept }: StandingEvidence, borneOut: boolean): readonly Finding[] =>
  kept !== undefined && kept.surePct < kept.promise.surePct - 1 && !borneOut
    ? [
        {
          kind: 'watch-it',
          why: problemOf('less-sure-than-asked', {
            surePct: Math.floor(kept.surePct),
            askedPct: kept.promise.surePct,
          }),
          next: 'count-order',
        },
      ]
    : [];

/** What speaks for it: the finding that stands where nothing speaks against. */
const inFavour = (
  { kept, promise, strips }: StandingEvidence,
  own: readonly OrderSeen[],
): readonly Finding[] => {
  const counted = countOrders(promise, own);
  const params = countParams(counted);
  const strip = strips.findLast(isGood);
  const next: NextAct = kept === undefined ? 'keep-it' : 'count-order';
  if (counted.borneOut)
    return [
      {
        kind: 'holds',
        why: problemOf('borne-out', params),
        next: kept === undefined ? 'keep-it' : 'nothing-to-do',
      },
    ];
  if (counted.parts > 0) return [{ kind: 'holds', why: problemOf('as-promised', params), next }];
  return strip === undefined
    ? [{ kind: 'holds', why: problemOf('by-cards-alone'), next }]
    : [{ kind: 'holds', why: problemOf('strip-held', { strip: strip.code }), next }];
};
