import { fQuantile } from '../../num/distributions.ts';
import { leastSquares, type LeastSquaresFit, type Residuals } from '../../num/leastSquares.ts';
import { fitCausticParabola } from './caustic.ts';
import type { LineWidthModel } from './lineWidthModel.ts';

/** The width of a line at one place. */
export interface LineWidth {
  readonly atMm: number;
  readonly widthMm: number;
}

/** A fit with what its residuals leave open. */
export interface LineWidthFit {
  readonly model: LineWidthModel;
  /** Standard error of the focus, mm. */
  readonly focusSdMm: number;
  /** Scatter of a width, as a share of it. */
  readonly noiseShare: number;
  /** Readings less parameters. */
  readonly degrees: number;
  /** Sum of the squared misfits of the logarithms. */
  readonly rss: number;
}

/** The dose is taken into the fit where it betters it by more than this chance would. */
const chance = 0.05;
/** Several begins: the sum of squares has side valleys where the focus sits on one narrow reading. */
const rayleighStarts = [0.15, 0.35] as const;
const doseStarts = [0.1, 0.35] as const;
/** Fewer readings cannot carry a fourth parameter. */
const leastForDose = 7;

/**
 * Fits where a line is narrowest, from widths at places, by least squares on the logarithms of the widths (a person reads
 * a width to a share of it). With four parameters where the dose shows in the widths, else with three. Null where no
 * focus comes out. ~20 ms for 12 widths.
 */
export const fitLineWidths = (widths: readonly LineWidth[]): LineWidthFit | null => {
  const begins = startsFor(widths);
  const plain = best(begins.map((start) => solve(widths, { start: start.slice(0, 3) })));
  const dosed =
    widths.length < leastForDose ? null : best(begins.map((start) => solve(widths, { start })));
  if (plain === null || dosed === null) {
    const only = plain ?? dosed;
    return only === null ? null : inFull(only, widths.length);
  }
  const spare = widths.length - 4;
  const betterment = (plain.rss - dosed.rss) / (dosed.rss / spare);
  const chosen = betterment > fQuantile(1 - chance, 1, spare) ? dosed : plain;
  return inFull(chosen, widths.length);
};

/**
 * The Rayleigh lengths that the widths bear out with 95 % confidence, whatever the dose: those at which the best fit is
 * not worse than the best of all by more than F allows. The dose hides in the shape, so this is wider than one fit's
 * standard error. Infinity, or 0, where the readings set no bound.
 */
export const rayleighBand = (
  widths: readonly LineWidth[],
  { model, rss }: LineWidthFit,
): readonly [lowMm: number, highMm: number] => {
  const parameters = widths.length < leastForDose ? 3 : 4;
  const spare = widths.length - parameters;
  const limit = rss * (1 + fQuantile(0.95, 1, spare) / spare);
  const isBorneOut = (rayleighMm: number): boolean =>
    rssGiven(widths, model, rayleighMm, parameters === 4) <= limit;
  return [edge(isBorneOut, model.rayleighMm, 1 / 1.25), edge(isBorneOut, model.rayleighMm, 1.25)];
};

/** Steps outwards from a length that is borne out to one that is not, then halves in between. */
const edge = (isBorneOut: (mm: number) => boolean, from: number, factor: number): number => {
  let inside = from;
  let outside = from * factor;
  for (let step = 0; isBorneOut(outside); step += 1) {
    if (step === 12) return factor > 1 ? Infinity : 0;
    [inside, outside] = [outside, outside * factor];
  }
  for (let halving = 0; halving < 5; halving += 1) {
    const middle = Math.sqrt(inside * outside);
    if (isBorneOut(middle)) inside = middle;
    else outside = middle;
  }
  return Math.sqrt(inside * outside);
};

const rssGiven = (
  widths: readonly LineWidth[],
  { focusMm, widthMm, q }: LineWidthModel,
  rayleighMm: number,
  withDose: boolean,
): number => {
  const lnRayleigh = Math.log(rayleighMm);
  const begin = [focusMm, Math.log(widthMm)];
  const doses = withDose ? [...doseStarts, ...(q > 0 ? [q] : [])] : [];
  const fits = [begin, ...doses.map((dose) => [...begin, Math.log(dose)])].map((start) =>
    solve(widths, { start, lnRayleigh }),
  );
  return best(fits)?.rss ?? Infinity;
};

const best = (fits: readonly (Solved | null)[]): Solved | null =>
  fits.reduce<Solved | null>(
    (least, fit) => (fit !== null && (least === null || fit.rss < least.rss) ? fit : least),
    null,
  );

type Solved = LeastSquaresFit;

/** Parameters: focus, ln zR (unless it is given), ln W0, and where the dose counts ln q. */
const solve = (
  widths: readonly LineWidth[],
  { start, lnRayleigh }: { readonly start: readonly number[]; readonly lnRayleigh?: number },
): Solved | null => {
  const residuals =
    lnRayleigh === undefined
      ? (at: readonly number[]): Residuals => residualsAt(widths, at)
      : (at: readonly number[]): Residuals => {
          const [focus = NaN, ...rest] = at;
          const { values, slopes } = residualsAt(widths, [focus, lnRayleigh, ...rest]);
          return { values, slopes: slopes.map((row) => row.filter((_, i) => i !== 1)) };
        };
  const solved = leastSquares(residuals, start);
  return solved.ok && solved.parameters.every(Number.isFinite) ? solved : null;
};

/** focus, ln zR, ln W0, ln q. */
const startsFor = (widths: readonly LineWidth[]): readonly (readonly number[])[] => {
  const places = widths.map(({ atMm }) => atMm);
  const [first, last] = [Math.min(...places), Math.max(...places)];
  const narrowest = widths.reduce<LineWidth | undefined>(
    (least, here) => (least === undefined || here.widthMm < least.widthMm ? here : least),
    undefined,
  );
  const parabola = fitCausticParabola(
    widths.map(({ atMm, widthMm }) => ({ atMm, diameterMm: widthMm })),
    { wavelengthMm: 1, relative: true },
  );
  const begins = [
    narrowest?.atMm ?? NaN,
    (first + last) / 2,
    ...(parabola.ok ? [parabola.value.waistAtMm] : []),
  ];
  const lnWidth = Math.log(narrowest?.widthMm ?? NaN);
  return begins.flatMap((at) =>
    rayleighStarts.flatMap((share) =>
      doseStarts.map((q) => [at, Math.log(share * (last - first)), lnWidth, Math.log(q)]),
    ),
  );
};

const residualsAt = (
  widths: readonly LineWidth[],
  [focus = NaN, lnRayleigh = NaN, lnWidth = NaN, lnQ]: readonly number[],
): Residuals => {
  const rayleigh = Math.exp(lnRayleigh);
  const q = lnQ === undefined ? 0 : Math.exp(lnQ);
  const lines = widths.map(({ atMm, widthMm }) => {
    const away = (atMm - focus) / rayleigh;
    const grown = 1 + away * away;
    // Below a hundredth the line is as good as faded: held there, so that a step too far is only a bad step.
    const dose = Math.max(0.01, 1 - q * Math.log(grown));
    const held = dose === 0.01;
    const byGrown = 0.5 / grown - (held ? 0 : (0.5 * q) / (grown * dose));
    const slopes = [
      (-2 * away * byGrown) / rayleigh,
      -2 * away * away * byGrown,
      1,
      ...(lnQ === undefined ? [] : [held ? 0 : (-0.5 * q * Math.log(grown)) / dose]),
    ];
    return { value: lnWidth + 0.5 * Math.log(grown * dose) - Math.log(widthMm), slopes };
  });
  return { values: lines.map(({ value }) => value), slopes: lines.map(({ slopes }) => slopes) };
};

const inFull = (
  { parameters, rss, unscaledCovariance }: Solved,
  readings: number,
): LineWidthFit => {
  const [focusMm = NaN, lnRayleigh = NaN, lnWidth = NaN, lnQ] = parameters;
  const degrees = readings - parameters.length;
  const noiseShare = Math.sqrt(rss / degrees);
  return {
    model: {
      focusMm,
      rayleighMm: Math.exp(lnRayleigh),
      widthMm: Math.exp(lnWidth),
      q: lnQ === undefined ? 0 : Math.exp(lnQ),
    },
    focusSdMm: noiseShare * Math.sqrt(unscaledCovariance[0]?.[0] ?? NaN),
    noiseShare,
    degrees,
    rss,
  };
};
