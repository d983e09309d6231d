/** What a reference file may say of how near is near enough. */
export type Tolerance = number | Readonly<Record<string, unknown>>;

/** One number, text or flag that is not as expected. */
export interface Mismatch {
  readonly path: string;
  readonly got: unknown;
  readonly expected: unknown;
}

export interface Comparison {
  /** How many single values were held against each other. */
  readonly compared: number;
  readonly mismatches: readonly Mismatch[];
}

/** Which keys of `expected` a named tolerance speaks of: `seRel` of everything that begins with `se`, and so on. */
const spokenOf: Readonly<Record<string, RegExp>> = {
  coef: /^(coef|intercept|slope$|closedForm|beta|a$|b$|sigma$|x50|fitted)/,
  param: /^(thresholds|beta)/,
  se: /^(se|vcov)/,
  deviance: /(deviance|logLik|pearson)/i,
  logLik: /^logLik/,
  doseLimits: /^doses$/,
  posterior: /^posterior/,
  p: /^(twoSided|less|greater|midP|oneSided)/,
  odds: /(OddsRatio|CI95)$/,
  projected: /^(projected|reprojection)/,
  H: /^H$/,
  Lab: /^(Lab|XYZ|linear)$/,
  computed: /^computed$/,
};

/** Keys that inform a reader and are no target. */
const isInformation = (key: string): boolean =>
  /^(printed|why$|reason$|note|prior$)/.test(key) || key.endsWith('_fromMemory');

/** Nobody prints these more closely; used for numbers that no tolerance of the case speaks of. */
const unspoken = { absolute: 0, relative: 1e-6 };

interface Allowed {
  readonly absolute: number;
  readonly relative: number;
}

/**
 * Holds what was computed against what was expected. Only keys that both have are compared; informational keys never;
 * lists must be equally long. Text and flags must be equal; a number may be off by the larger of its absolute and its
 * relative allowance, and by half a unit of the last digit printed.
 */
export const compare = (got: unknown, expected: unknown, tolerance: Tolerance): Comparison => {
  const mismatches: Mismatch[] = [];
  let compared = 0;
  const digits = printedDigits(expected);
  const walk = (mine: unknown, theirs: unknown, path: readonly string[]): void => {
    if (isRecord(theirs) && isRecord(mine)) {
      for (const [key, wanted] of Object.entries(theirs)) {
        if (!isInformation(key) && Object.hasOwn(mine, key))
          walk(mine[key], wanted, [...path, key]);
      }
      return;
    }
    if (Array.isArray(theirs) && Array.isArray(mine) && theirs.length === mine.length) {
      for (const [i, wanted] of theirs.entries()) walk(mine[i], wanted, [...path, String(i)]);
      return;
    }
    compared += 1;
    const isNear =
      typeof theirs === 'number' && typeof mine === 'number'
        ? nearEnough(mine, theirs, withPrinting(allowedAt(path, tolerance), theirs, digits))
        : Object.is(mine, theirs);
    if (!isNear) mismatches.push({ path: path.join('.'), got: mine, expected: theirs });
  };
  walk(got, expected, []);
  return { compared, mismatches };
};

/** As JSON would give it back, with the numbers that JSON lacks as text: "Infinity". */
export const plain = (value: unknown): unknown => {
  if (typeof value === 'number' && !Number.isFinite(value)) return String(value);
  if (Array.isArray(value)) return value.map(plain);
  if (!isRecord(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, plain(inner)]));
};

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const nearEnough = (got: number, expected: number, { absolute, relative }: Allowed): boolean =>
  got === expected || Math.abs(got - expected) <= Math.max(absolute, relative * Math.abs(expected));

/** To how many significant digits the expected numbers were printed: at least 10, at most 17, the longest tells. */
const printedDigits = (expected: unknown): number => {
  if (Array.isArray(expected)) return Math.max(10, ...expected.map(printedDigits));
  if (isRecord(expected)) return Math.max(10, ...Object.values(expected).map(printedDigits));
  if (typeof expected !== 'number' || expected === 0) return 10;
  const [mantissa = ''] = Math.abs(expected).toExponential().split('e');
  return Math.min(17, Math.max(10, mantissa.replace('.', '').length));
};

const withPrinting = (allowed: Allowed, expected: number, digits: number): Allowed => {
  if (expected === 0) return allowed;
  const halfUnit = 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(expected))) + 1 - digits);
  const size = Math.max(allowed.absolute, allowed.relative * Math.abs(expected));
  return { absolute: size + halfUnit, relative: 0 };
};

const allowedAt = (path: readonly string[], tolerance: Tolerance): Allowed => {
  if (typeof tolerance === 'number') return { absolute: tolerance, relative: 0 };
  const { absolute, relative } = tolerance;
  const general = { absolute: shareAt(path, absolute), relative: shareAt(path, relative) };
  if (general.absolute !== null || general.relative !== null) {
    return { absolute: general.absolute ?? 0, relative: general.relative ?? 0 };
  }
  return namedAt(path, tolerance) ?? unspoken;
};

/** `{absolute: 1e-9}` speaks of everything, `{absolute: {a: 1e-9}}` of the keys that it names. */
const shareAt = (path: readonly string[], share: unknown): number | null => {
  if (typeof share === 'number') return share;
  if (!isRecord(share)) return null;
  const named = path.map((key) => share[key]).find((value) => typeof value === 'number');
  return named ?? null;
};

const namedAt = (
  path: readonly string[],
  tolerance: Readonly<Record<string, unknown>>,
): Allowed | null => {
  for (const [name, size] of Object.entries(tolerance)) {
    const [, subject, kind] = /^(.+?)(Abs|Rel|Relative)$/.exec(name) ?? [];
    if (subject === undefined || typeof size !== 'number') continue;
    const speaksOf = Object.hasOwn(spokenOf, subject) ? spokenOf[subject] : undefined;
    if (speaksOf === undefined || !path.some((key) => speaksOf.test(key))) continue;
    return kind === 'Abs' ? { absolute: size, relative: 0 } : { absolute: 0, relative: size };
  }
  return null;
};
