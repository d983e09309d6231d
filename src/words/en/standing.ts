import type { StandingCode } from '../../core/problems/standing.ts';
import type { Sentences } from '../shape/sentence.ts';
import { judgedMaterialWords as judged } from './judgedMaterials.ts';

/** Why a sheet or a kept setting stands as it does, and what to do about it. */
export const standingWords = {
  'order-failed': {
    message: (p) =>
      `${p.notOut} of ${p.parts} sound parts cut at ${p.speedMmPerS} mm/s did not come out; the promise allows about ${p.allowedFor} of them.`,
    remedy: () =>
      'Run one step slower until it is checked, by a check strip or by the next order, counted.',
  },
  'orders-since-failed': {
    message: (p) =>
      `It has got worse: of the last ${p.parts} sound parts cut at ${p.speedMmPerS} mm/s, ${p.notOut} did not come out; the promise allows about ${p.allowedFor} of them.`,
    remedy: () =>
      'Run one step slower until it is checked, by a check strip or by the next order, counted.',
  },
  'failed-where-slower-welds': {
    message: (p) =>
      `${p.notOut} of ${p.parts} sound parts cut at ${p.speedMmPerS} mm/s did not come out; the promise allows about ${p.allowedFor} of them. Slower than ${p.slowestMmPerS} mm/s too many weld back, so slower is no way out.`,
    remedy: () =>
      'Look whether they had welded or were not through, then cut a card of this sheet: with more air along the cut, or at another power.',
  },
  'run-before-failed': {
    message: (p) =>
      `What was run before failed: ${p.notOut} of ${p.parts} sound parts cut at ${p.speedMmPerS} mm/s did not come out; the promise allows about ${p.allowedFor} of them.`,
    remedy: () =>
      'Run the slower speed until it is checked, by a check strip or by the next order, counted.',
  },
  'checked-since': {
    message: (p) =>
      `${p.notOut} of ${p.parts} sound parts failed at ${p.speedMmPerS} mm/s; the check strip cut since came out.`,
    remedy: () => 'A strip is six shapes: stay one step slower and count the next order.',
  },
  'slipped-once': {
    message: (p) =>
      `It slipped once, with ${p.notOut} of ${p.parts} sound parts not out; the orders since came out.`,
    remedy: () => 'Go on counting.',
  },
  'worse-than-foreseen': {
    message: () => 'More stays in than was expected, though not yet more than was promised.',
    remedy: () => 'Cut a check strip with the next sheet and go on counting.',
  },
  'more-than-allowed': {
    message: (p) =>
      `${p.notOut} of ${p.parts} sound parts did not come out; the promise allows about ${p.allowedFor} of them. That may still be chance.`,
    remedy: () => 'Count the next order: it decides.',
  },
  'strip-says-slower': {
    message: (p) => `Check strip ${p.strip} says that this speed is too fast there.`,
    remedy: () => 'Run the speed that the strip gave, and count that order.',
  },
  'strip-does-not-tell': {
    message: (p) => `Check strip ${p.strip} does not carry this speed, nor does it give another.`,
    remedy: () => 'Run one step slower, and cut a card of this sheet.',
  },
  'cards-say-slower': {
    message: (p) =>
      `With what was read and counted since it was kept, ${p.holdsMmPerS} mm/s holds, not ${p.speedMmPerS}.`,
    remedy: () => 'Run the slower speed; keep it in place of this one.',
  },
  'no-answer-since-it-welds': {
    message: (p) =>
      `With what was read and counted since it was kept, no speed can be promised at this power: slower than about ${p.bestMmPerS} mm/s too much welds back, faster too little is cut through.`,
    remedy: () => 'Cut a card of this sheet, with more air along the cut or at another power.',
  },
  'no-answer-any-more': {
    message: () =>
      'With what was read and counted since it was kept, no speed can be promised at this power.',
    remedy: () => 'Run one step slower, and cut a card of this sheet.',
  },
  'less-sure-than-asked': {
    message: (p) => `It was kept at ${p.surePct} % sure, where ${p.askedPct} % was asked for.`,
    remedy: () => 'Count the first orders, and watch the first parts.',
  },
  'card-half-read': {
    message: (p) => `${p.read} of ${p.cells} shapes are read.`,
    remedy: (p) =>
      `Say what the other ${p.left} did: they were not through, or were not looked at.`,
  },
  'outside-what-was-cut': {
    message: () => 'A guess: this setting lies outside what was cut.',
    remedy: () => 'Cut a card that reaches it, or watch the first parts and count the order.',
  },
  'nothing-known': {
    message: () => 'No speed can be promised yet.',
    remedy: () => 'Cut a card of this sheet, or count an order.',
  },
  'not-worked-out': {
    message: () =>
      'What was read and counted since it was kept could not be worked out in time: how it stands is not known.',
    remedy: () =>
      'Run one step slower and count the order. Ask again; if it stays so, begin a new sheet and keep the setting from there.',
  },
  'borne-out': {
    message: (p) =>
      `${p.notOut} of ${p.parts} sound parts did not come out: the count alone shows that the promise holds.`,
    remedy: () => 'Go on counting.',
  },
  'as-promised': {
    message: (p) =>
      `${p.notOut} of ${p.parts} sound parts did not come out; the promise allows about ${p.allowedFor} of them.`,
    remedy: () => 'Go on counting.',
  },
  'strip-held': {
    message: (p) => `By its cards, and check strip ${p.strip} came out. No order is counted yet.`,
    remedy: () => 'Count the first order.',
  },
  'by-cards-alone': {
    message: () => 'By its cards alone: no order is counted yet.',
    remedy: () => 'Count the first order.',
  },
  'above-its-machine': {
    message: (p) =>
      `It was kept at ${p.powerPct} %, and its machine is kept to ${p.most} % by now.`,
    remedy: () => 'Cut a card within the limit, and keep what it finds.',
  },
  'above-its-tube': {
    message: (p) =>
      `It was kept at ${p.powerPct} %, and the tube reaches its rated current at about ${p.most} %.`,
    remedy: () => 'Cut a card below that, and keep what it finds.',
  },
  'beyond-its-speeds': {
    message: (p) =>
      `It was kept at ${p.speedMmPerS} mm/s, and its machine is said to go from ${p.least} to ${p.most} mm/s.`,
    remedy: () => 'Put the speeds of the machine right, or cut a card within them.',
  },
  'not-to-be-cut': {
    message: (p) =>
      `${judged[p.judged].name} is not cut here, so nothing is said of how to cut it.`,
    remedy: (p) =>
      `${judged[p.judged].reason} Cut another material. Source: ${judged[p.judged].sources.join('; ')}.`,
  },
} satisfies Sentences<StandingCode>;
