import { normalCdf, normalPdf } from '../../num/normal.ts';
import { tabulateSigmoid } from '../../num/tabulate.ts';

/** How the share of shapes that come out rises with the margin in units of σ. */
export interface Link {
  readonly name: 'normal' | 'logistic' | 'student3';
  /** F(x), rising from 0 to 1, F(−x) = 1 − F(x). */
  readonly cdf: (x: number) => number;
  readonly pdf: (x: number) => number;
  /** F from a table, right to 1e-10 absolute: for inner loops whose results are mixed with misreading. */
  readonly quickCdf: (x: number) => number;
}

const normalQuartile = 0.6744897501960817;
/** ln 3, upper quartile of the logistic. */
const logisticScale = Math.log(3) / normalQuartile;
/** Upper quartile of Student's t with three degrees of freedom. */
const studentScale = 0.7648923284043542 / normalQuartile;

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

/** F of Student's t3 in closed form: ½ + (1/π)(t/√3/(1 + t²/3) + atan(t/√3)); Johnson, Kotz & Balakrishnan (1995). */
const student3Cdf = (t: number): number => {
  const u = t / Math.sqrt(3);
  return 0.5 + (u / (1 + u * u) + Math.atan(u)) / Math.PI;
};

const student3Pdf = (t: number): number => 2 / (Math.PI * Math.sqrt(3) * (1 + (t * t) / 3) ** 2);

/** Up to `reach` F is read from the table: so far out cells lie at small σ. */
const withTable = (
  name: Link['name'],
  cdf: Link['cdf'],
  pdf: Link['pdf'],
  reach: number,
): Link => ({ name, cdf, pdf, quickCdf: tabulateSigmoid(cdf, pdf, reach) });

/** The three links, scaled so that their quartiles are those of the normal. */
export const links: readonly Link[] = [
  withTable('normal', normalCdf, normalPdf, 8),
  withTable(
    'logistic',
    (x) => logistic(logisticScale * x),
    (x) => {
      const f = logistic(logisticScale * x);
      return logisticScale * f * (1 - f);
    },
    20,
  ),
  withTable(
    'student3',
    (x) => student3Cdf(studentScale * x),
    (x) => studentScale * student3Pdf(studentScale * x),
    40,
  ),
];
