import { isRefusedMaterial, judgedMaterialNames } from '../judgedMaterials.ts';
import { figure, oneOf, text, type ProblemList } from './param.ts';

/** Why a sheet or a kept setting stands as it does. */
export const standingProblems = {
  'order-failed': { speedMmPerS: figure, notOut: figure, parts: figure, allowedFor: figure },
  'orders-since-failed': { speedMmPerS: figure, notOut: figure, parts: figure, allowedFor: figure },
  'failed-where-slower-welds': {
    speedMmPerS: figure,
    notOut: figure,
    parts: figure,
    allowedFor: figure,
    slowestMmPerS: figure,
  },
  'run-before-failed': { speedMmPerS: figure, notOut: figure, parts: figure, allowedFor: figure },
  'checked-since': { speedMmPerS: figure, notOut: figure, parts: figure, allowedFor: figure },
  'slipped-once': { speedMmPerS: figure, notOut: figure, parts: figure, allowedFor: figure },
  'worse-than-foreseen': {},
  'more-than-allowed': { speedMmPerS: figure, notOut: figure, parts: figure, allowedFor: figure },
  'strip-says-slower': { strip: text, of: text },
  'strip-does-not-tell': { strip: text, of: text },
  'cards-say-slower': { speedMmPerS: figure, holdsMmPerS: figure },
  'no-answer-any-more': {},
  'no-answer-since-it-welds': { bestMmPerS: figure },
  'less-sure-than-asked': { surePct: figure, askedPct: figure },
  'card-half-read': { read: figure, cells: figure, left: figure },
  'outside-what-was-cut': { speedMmPerS: figure, powerPct: figure },
  'nothing-known': {},
  'not-worked-out': {},
  'borne-out': { notOut: figure, parts: figure, allowedFor: figure },
  'as-promised': { notOut: figure, parts: figure, allowedFor: figure },
  'strip-held': { strip: text },
  'by-cards-alone': {},
  'above-its-machine': { powerPct: figure, most: figure },
  'above-its-tube': { powerPct: figure, most: figure },
  'beyond-its-speeds': { speedMmPerS: figure, least: figure, most: figure },
  'not-to-be-cut': { text, judged: oneOf(judgedMaterialNames.filter(isRefusedMaterial)) },
} as const satisfies ProblemList;

export type StandingCode = keyof typeof standingProblems;
