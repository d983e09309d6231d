import type { Tolerance } from './compare.ts';
import type { Answerer } from './referenceFile.ts';
import { t01 } from './t01.ts';
import { t02 } from './t02.ts';
import { t03 } from './t03.ts';
import { t04 } from './t04.ts';
import { t05 } from './t05.ts';
import { t06, t06Tolerance } from './t06.ts';
import { t07 } from './t07.ts';
import { t08 } from './t08.ts';
import { t09 } from './t09.ts';
import { t10 } from './t10.ts';
import { t11 } from './t11.ts';
import { t12 } from './t12.ts';
import { t13 } from './t13.ts';
import { t14, t14Tolerance } from './t14.ts';
import { t15 } from './t15.ts';
import { t16 } from './t16.ts';
import { t18 } from './t18.ts';
import { t19 } from './t19.ts';

/** What the project can say on one reference file. */
export interface Topic {
  readonly answer: Answerer;
  /** Where the file's own tolerance is not what our method is judged by: another, made from what is expected. */
  readonly tolerance?: (expected: unknown, own: Tolerance | undefined) => Tolerance | undefined;
}

/** Which of the project's functions answer which reference file. */
export const topics: Readonly<Record<string, Topic>> = {
  t01_binary_dose_response: { answer: t01 },
  t02_ordinal: { answer: t02 },
  t03_housing: { answer: t03 },
  t04_firth: { answer: t04 },
  t05_sensitivity: { answer: t05 },
  t06_bayes_posterior: { answer: t06, tolerance: t06Tolerance },
  t07_binomial: { answer: t07 },
  t08_paired_exact: { answer: t08 },
  t09_pchip_isotonic: { answer: t09 },
  t10_caustic: { answer: t10 },
  t11_gum: { answer: t11 },
  t12_control_charts: { answer: t12 },
  t13_colour: { answer: t13 },
  t14_homography: { answer: t14, tolerance: t14Tolerance },
  t15_motion: { answer: t15 },
  t16_rs274_ngc: { answer: t16 },
  t18_quasirandom: { answer: t18 },
  t19_distributions: { answer: t19 },
};
