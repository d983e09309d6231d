import { z } from 'zod';

import {
  betaCdf,
  betaQuantile,
  chiSquareCdf,
  chiSquareQuantile,
  chiSquareUpperTail,
  fCdf,
  fQuantile,
  logGamma,
  tCdf,
  tQuantile,
} from '../../num/distributions.ts';
import {
  inverseMills,
  logNormalCdf,
  normalCdf,
  normalPdf,
  normalQuantile,
} from '../../num/normal.ts';
import type { Answerer } from './referenceFile.ts';

const one = (f: (x: number) => number) => z.tuple([z.number()]).transform(([x]) => f(x));
const two = (f: (x: number, a: number) => number) =>
  z.tuple([z.number(), z.number()]).transform(([x, a]) => f(x, a));
const three = (f: (x: number, a: number, b: number) => number) =>
  z.tuple([z.number(), z.number(), z.number()]).transform(([x, a, b]) => f(x, a, b));

const functions: Readonly<Record<string, z.ZodType<number>>> = {
  normalPdf: one(normalPdf),
  normalCdf: one(normalCdf),
  logNormalCdf: one(logNormalCdf),
  normalQuantile: one(normalQuantile),
  inverseMillsPdfOverCdf: one(inverseMills),
  tCdf: two(tCdf),
  tQuantile: two(tQuantile),
  betaCdf: three(betaCdf),
  betaQuantile: three(betaQuantile),
  chi2Cdf: two(chiSquareCdf),
  chi2Sf: two(chiSquareUpperTail),
  chi2Quantile: two(chiSquareQuantile),
  fCdf: three(fCdf),
  fQuantile: three(fQuantile),
  logGamma: one(logGamma),
};

/** Distribution functions and their inverses. */
export const t19: Answerer = (input) => {
  const name = input['function'];
  if (typeof name !== 'string' || !Object.hasOwn(functions, name)) return undefined;
  return { value: functions[name]?.parse(input['args']) };
};
