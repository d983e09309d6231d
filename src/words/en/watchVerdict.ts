import { alarmLimits } from '../../core/watch/alarmLimits.ts';
import type { Cause, LaserOrWood } from '../../core/watch/laserOrWood.ts';
import { stripRule, type StripVerdict } from '../../core/watch/stripVerdict.ts';
import type { WatchChart } from '../../core/watch/watchChart.ts';
import type { LookAt } from '../../core/watch/whatToLookAt.ts';
import type { CautionAct } from '../shape/caution.ts';
import { allCautions } from './cautions.ts';
import { settingWords } from './terms/figures.ts';
import { looks } from './terms/looks.ts';

const pct = (value: number): string => `${String(Math.round(value))}\u202f%`;

const standing = (chart: WatchChart): string => {
  const { points, slipping } = chart;
  switch (chart.standing) {
    case 'nothing-yet':
      return 'Nothing counted yet. Count an order, and it is held against what was promised.';
    case 'as-foreseen':
      return `On the chart: ${counted(points)}, none beyond its limits.`;
    case 'recovered':
      return `On the chart: ${counted(points)}. It slipped once; the last is within its limits again.`;
    case 'alarm': {
      const since = points.length - (slipping?.sincePoint ?? 0);
      const loss =
        slipping === undefined || slipping.speedLossPct < 1
          ? ''
          : ` As if it cut about ${pct(slipping.speedLossPct)} slower (${String(slipping.lowPct)} to ${pct(slipping.highPct)}).`;
      const over = since === 1 ? 'the last count' : `the last ${String(since)} counts`;
      return `The chart is beyond its limit: more stays in than was expected and than chance gives, over ${over}.${loss}`;
    }
  }
};

const counted = (points: WatchChart['points']): string => {
  const orders = points.filter(({ kind }) => kind === 'order').length;
  const strips = points.length - orders;
  const words = [
    ...(orders === 0 ? [] : [orders === 1 ? '1 order' : `${String(orders)} orders`]),
    ...(strips === 0 ? [] : [strips === 1 ? '1 strip' : `${String(strips)} strips`]),
  ];
  return words.join(' and ');
};

const verdict = (found: StripVerdict): string => {
  switch (found.kind) {
    case 'unread':
      return 'Not read yet.';
    case 'as-before':
      return 'As before.';
    case 'retune':
      return `Retune: new setting ${settingWords(found.setting)}.`;
    case 'cut-a-card':
      return 'Cut a card.';
  }
};

const verdictMore = (found: StripVerdict): string => {
  switch (found.kind) {
    case 'unread':
      return 'Cut it, lift it, tap it once and push lightly; then say what fell out.';
    case 'as-before':
      return found.allOut
        ? `Everything came out. The kept setting stays, ${sure(found.surePct)}; how much faster it could go only a card tells.`
        : `The kept setting keeps its promise on this sheet, ${sure(found.surePct)}. Count the order: it is the best check there is.`;
    case 'retune':
      return [
        found.which === 'slower'
          ? `The kept setting would hold here with ${pct(found.provenSurePct)} certainty only; this one, ${sure(found.surePct)}.`
          : `The kept setting holds too; this one is faster and holds, ${sure(found.surePct)}.`,
        ...(found.guess
          ? ['It is slower than any shape of the strip, so watch the first parts.']
          : []),
        'Count the first order with it.',
      ].join(' ');
    case 'cut-a-card':
      return `The strip does not tell which speed would hold, and the kept setting would with ${pct(found.provenSurePct)} certainty only. A card of this sheet does.`;
  }
};

const sure = (value: number): string => `${pct(Math.min(99, value))} sure`;

const pointed: Readonly<Record<Cause | 'unclear', string>> = {
  laser: 'It points at the laser: the reference sheet cuts worse too.',
  wood: 'It points at the wood: the reference sheet cuts as it did, the new batch does not.',
  both: 'It points at both: the reference sheet cuts worse, and the new batch worse still.',
  neither: 'It points at neither: both strips came out as chance would have it.',
  unclear:
    'The two strips do not tell laser from wood clearly. Look at what costs least on both sides.',
};

const change = ({ mean, sd }: LaserOrWood['laser']): string => {
  const speedPct = Math.round(100 * Math.expm1(mean));
  const spread = Math.round(100 * sd);
  const size =
    speedPct === 0
      ? 'as fast as before'
      : `${String(Math.abs(speedPct))}\u202f% ${speedPct < 0 ? 'slower' : 'faster'}`;
  return `${size}, give or take ${String(spread)}`;
};

/** The cautions that go with each, by the act that they stand under and their code. */
const cautionsOf: Readonly<Record<LookAt, readonly (readonly [CautionAct, string])[]>> = {
  lens: [
    ['always', 'defer'],
    ['focus', 'not-along-the-beam'],
  ],
  water: [['current', 'water-and-voltage']],
  focus: [
    ['focus', 'measure-stopped'],
    ['focus', 'ramp-clears-head'],
  ],
  air: [['airComparison', 'low-not-off']],
  meter: [
    ['current', 'tube-supply-kills'],
    ['current', 'panel-meter-first'],
    ['current', 'within-rating'],
  ],
  mirrors: [
    ['focus', 'not-along-the-beam'],
    ['always', 'trained-only'],
  ],
  tube: [
    ['current', 'tube-supply-kills'],
    ['current', 'competent-person'],
    ['current', 'isolate-and-discharge'],
  ],
  controller: [
    ['current', 'panel-meter-first'],
    ['current', 'within-rating'],
  ],
  wiring: [
    ['current', 'tube-supply-kills'],
    ['current', 'competent-person'],
    ['current', 'isolate-and-discharge'],
  ],
  supply: [
    ['current', 'tube-supply-kills'],
    ['current', 'competent-person'],
    ['current', 'isolate-and-discharge'],
  ],
  thickness: [['focus', 'measure-stopped']],
  moisture: [['fire', 'flame-stays']],
  batch: [
    ['unattended', 'never-leave'],
    ['fire', 'extinguisher'],
  ],
  'count-on': [['unattended', 'never-leave']],
};

/** What is watched, in sentences. */
export const watchVerdictText = {
  standing,
  verdict,
  verdictMore,
  cause: ({ pointsAt }: LaserOrWood): string => pointed[pointsAt],
  causeMore: ({ laser, wood }: LaserOrWood): string =>
    `By the reference sheet the laser cuts ${change(laser)}; beside that the new batch cuts ${change(wood)}.`,
  /** How a strip is judged, for whoever wants to know. */
  rule: `A strip stays “as before” while the kept setting holds with ${String(stripRule.stayPct)}\u202f% certainty and nothing failed at it. Else the new setting is the fastest that holds with ${String(stripRule.retuneSurePct)}\u202f% certainty, worth typing from ${String(stripRule.fasterByPct)}\u202f% faster on. Played on invented workshops with six shapes, 96 in 100 of the settings that it ends with keep their promise on the new batch after 60 earlier shapes, 98 after 24, and 87 where single shapes scatter with heavy tails.`,
  alarms: `An alarm without cause comes about once in ${String(alarmLimits.ordersPerFalseAlarm)} orders.`,
  look: (what: LookAt) => {
    const [name, how] = looks[what];
    return {
      name,
      how,
      cautions: cautionsOf[what].map(([act, code]) => {
        const caution = allCautions[act].find((one) => one.code === code);
        // A caution that has moved must not be lost in silence.
        if (caution === undefined) throw new Error(`no caution ${code} for ${act}`);
        return caution.sentence;
      }),
    };
  },
};
