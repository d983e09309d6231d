import { links } from '../../num/link.ts';
import { grades, type Grade } from '../reading/grade.ts';
import type { CellLooks } from './cellLooks.ts';
import type { CutLine } from './cutLine.ts';

/** What a photograph says of one shape. */
export interface CellSeen {
  readonly cell: string;
  readonly grade: Grade | 'cant-tell';
  /** How likely that grade is, 0–1; of `cant-tell`, that of the likeliest. */
  readonly sure: number;
}

/** Less sure than this of the likeliest grade is none. */
export const leastSure = 0.6;

/** Where a shape in place and one that is out are equally likely: this much of it looks like the sheet around. */
const evenSheet = 0.65;
const perSheet = 12;
/** Hues of the sheet around that are this far from the card's, ln, are a hand's or a stain's. */
const oddHue = 0.3;
/** What lies under the card must differ from it by so much for a shape to be surely in place, and by so much to tell. */
export const goodContrast = 4;
const leastContrast = 2;
/** Less than it differs by chance: nothing tells the one from the other. */
const noContrast = 1;
/** A piece tilted so that its light is this far from the sheet's, ln, is held by less than the whole outline. */
const tiltShade = 0.16;
const perShade = 25;
/** From the front a shape in place that is not tilted is more often not through than hanging flush; no source. */
const flushHangs = 0.25;
/** From behind: the share of the outline along which the cut shows where hanging and not through are equally likely. */
const evenLined = 0.5;
const perLined = 20;
/** A cut right through darkens its line by at least so much, ln; where that would not be seen, no line says nothing. */
const slitLn = 0.15;

/** What the back shows of one shape. */
export interface BackLooks extends CellLooks, CutLine {}

/** The likeliest grade by what the front shows and, where there is a photograph of it, the back. */
export const gradeCell = (front: CellLooks, back?: BackLooks): CellSeen => {
  const { cell } = front;
  const out = outBy(front);
  const behind = back === undefined ? out : outBy(back);
  const isOut = out * agreeing(out, behind);
  const isIn = (1 - out) * agreeing(1 - out, 1 - behind);
  const hangs = hangsBy(front, back);
  const shares = { out: isOut, hangs: isIn * hangs, stays: isIn * (1 - hangs) };
  const [grade, sure] = grades.reduce<readonly [Grade, number]>(
    (best, one) => (shares[one] > best[1] ? [one, shares[one]] : best),
    ['out', -1],
  );
  return { cell, grade: sure < leastSure ? 'cant-tell' : grade, sure };
};

/** Both sides say the same of a hole; where they do not, neither is believed. */
const agreeing = (one: number, other: number): number =>
  1 - Math.abs(one - other) * (one > 0.5 ? 1 : 0);

const outBy = ({ sheet, under, neither, odd, contrast }: CellLooks): number => {
  const bySheet = logistic(perSheet * (evenSheet - sheet));
  // A hole that shows only its walls is one; something that lies over the shape looks the same.
  const believed = sheet < evenSheet && under < 0.1 && neither > 0.5 ? 0.8 : 1;
  const plain = held(2 - odd / oddHue);
  const clear = held((contrast - leastContrast) / (goodContrast - leastContrast));
  // What looks unlike the sheet is more likely a hole all the same.
  const shows = bySheet > 0.5 ? (0.5 + clear / 2) * held(contrast / noContrast) : clear;
  return 0.5 + (bySheet - 0.5) * believed * plain * shows;
};

const hangsBy = (front: CellLooks, back: BackLooks | undefined): number => {
  const tilted = perShade * (Math.abs(front.shade) - tiltShade);
  if (back === undefined) return logistic(Math.max(logit(flushHangs), tilted));
  const seen = Math.min(1, (slitLn / back.faintestLn) ** 2);
  const byLine = perLined * (back.lined - evenLined) * (back.lined > evenLined ? 1 : seen);
  const tiltedBehind = perShade * (Math.abs(back.shade) - tiltShade);
  return logistic(byLine + 0.3 * Math.max(0, tilted, tiltedBehind));
};

const held = (x: number): number => Math.max(0, Math.min(1, x));
const { probability: logistic, predictor: logit } = links.logit;
