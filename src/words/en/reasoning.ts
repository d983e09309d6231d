import type { Air } from '../../core/machine/air.ts';
import type { PromiseWish } from '../../core/reading/promise.ts';
import {
  airWords,
  inHundred,
  lengthWords,
  onAverageInHundred,
  powerWords,
  speedWords,
  sureWords,
} from './terms/figures.ts';

const holdsFor: Readonly<Record<PromiseWish['for'], string>> = {
  sheet: 'on this sheet',
  batch: 'on any sheet of this batch',
  newBatch: 'on a batch not seen yet',
};

/** Words of the printed page that gives the whole reasoning. */
export const reasoningText = {
  title: (speedMmPerS: number, powerPct: number, air?: Air) =>
    `Why ${speedWords(speedMmPerS)} at ${powerWords(powerPct)}${airWords(air)}`,
  titleOfNone: 'Why there is no answer yet',
  question: ({ outOf100, surePct, partLengthMm, for: what }: PromiseWish, stock: string) =>
    `Question: how fast can ${stock} be cut so that ${inHundred(outOf100)} in 100 sound parts with ${lengthWords(partLengthMm)} of cut come out, ${holdsFor[what]}, and we are ${sureWords(surePct)} sure?`,
  cells: 'The shapes, by speed. The larger the ring, the more the answer rests on that shape.',
  rings:
    'Solid ring: without it the answer is slower. Dashed ring: without it faster. Blue line: the answer.',
  carries: 'What carries it',
  changes: 'What would change it',
  expectation: 'What rests on expectation',
  model: 'Model',
  modelLines: [
    'ln v50 = a + b·ln(P/P0) – d·ln(h/h0) + q·ln n + air + batch + sheet: where half come out, by power P, thickness h, passes n.',
    'P(out) = F((ln v50 – ln v)/s) to the power L; P(out or hangs) likewise, with the hanging band g added. L: length over 60 mm, at least 1.',
    'F: normal, logistic and Student t3, scaled to equal quartiles, weighed .5, .2, .3 beforehand. A flaw meets a shape by its length; one grade in 100 is misread.',
  ],
  learntTable: 'Priors and posterior',
  quantity: 'quantity',
  before: 'prior',
  after: 'posterior',
  learnt: 'learnt',
  data: 'Data',
  dataLine: (out: number, hangs: number, stays: number, others: readonly string[]) =>
    [
      `${String(out)} came out, ${String(hangs)} hung, ${String(stays)} not through`,
      ...others,
    ].join('; ') + '.',
  tallies: (parts: number) => `${String(parts)} parts of orders`,
  habit: 'what is run now',
  history: (cells: number) => `${String(cells)} shapes of earlier sheets`,
  olderSheets: 'what older sheets taught',
  convergence: 'Convergence',
  converged: (points: number, effective: number, shape: number, links: readonly string[]) =>
    `Importance sampling on a fixed sequence of lines: ${String(points)} points, worth ${String(effective)} lines of equal weight; Pareto shape of the weights ${shape.toFixed(2)} (sound below 0.7). Links now: ${links.join(', ')}.`,
  link: (name: 'normal' | 'logistic' | 'student3', probability: number) =>
    `${{ normal: 'normal', logistic: 'logistic', student3: 't3' }[name]} ${(100 * probability).toFixed(0)}\u00a0%`,
  decision: 'Decision',
  decided: (holding: number, speed: number, power: number, sure: number) =>
    `The promise holds with the wanted certainty up to ${speedWords(Number(holding.toFixed(2)))} at ${powerWords(power)}; held to the fastest that came out and rounded down: ${speedWords(speed)}, at which we are ${sureWords(sure)} sure.`,
  step: (name: 'surer' | 'faster', speed: number, mean: number, sure: number) =>
    `One step ${name}, ${speedWords(speed)}: ${onAverageInHundred(mean)} in 100 on average, ${sureWords(sure)} sure.`,
  sensitivity: 'Sensitivity',
  notClaimed: 'What may not be claimed',
  notClaimedLines: (what: PromiseWish['for']): readonly string[] => [
    `The promise is for sound material, ${holdsFor[what]}, at the place on the bed and in the state of lens, focus, air and water that the card was cut in.`,
    '“Sure” is about what is known of the changeover and the scatter, not about each single part or sheet. The count of real orders is the test of it.',
    'It says how a part falls out, and nothing of fire, fume or the machine: cautions, the maker’s manual and local rules come first.',
  ],
  foot: (version: string, madeAt: string) =>
    `Throughcut ${version} · ${madeAt.slice(0, 16).replace('T', ' ')} UTC · left-out parts by Pareto-smoothed importance sampling (Vehtari, Gelman & Gabry 2017)`,
};
