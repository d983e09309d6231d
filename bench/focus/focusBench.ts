import { findFocus } from '../../src/core/focus/findFocus.ts';
import { alongAtMm, rampAbout, sineOf, type FocusRamp } from '../../src/core/focus/focusRamp.ts';
import type { FocusEstimate, FocusReadings } from '../../src/core/focus/focusTest.ts';
import { fadesAwayMm, lineWidthMm } from '../../src/core/focus/lineWidthModel.ts';
import type { Outcome } from '../../src/core/problem.ts';
import { seededRandom, type SeededRandom } from '../../src/num/seededRandom.ts';
import { lineOf, someBeam, type Beam } from './beams.ts';

const stripMm = 120;

/** A ramp set up about where the focus is believed, which is off by so much. */
const rampFor = (beam: Beam, offMm: number): FocusRamp => {
  const ramp = rampAbout(beam.gapMm + offMm, stripMm);
  if (!ramp.ok) throw new Error(ramp.problem.code);
  return ramp.value;
};

type Reading = (beam: Beam, ramp: FocusRamp, random: SeededRandom) => FocusReadings;

/** Widths at even places wherever the line shows, read to a share of themselves. */
const widthsOf =
  (count: number, noiseShare: number, dose: (random: SeededRandom) => number): Reading =>
  (beam, ramp, random) => {
    const [focus, sine] = [alongAtMm(ramp, beam.gapMm), sineOf(ramp)];
    const line = lineOf(beam, focus * sine, dose(random));
    // Where it is nearly gone nobody measures a width.
    const shows = (0.92 * fadesAwayMm(line)) / sine;
    const [from, to] = [Math.max(2, focus - shows), Math.min(stripMm - 2, focus + shows)];
    const widths = Array.from({ length: count }, (_, i) => {
      const alongMm = from + ((to - from) * i) / (count - 1);
      const widthMm = lineWidthMm(line, alongMm * sine) * Math.exp(noiseShare * random.normal());
      return { alongMm, widthMm: Math.max(0.01, widthMm) };
    });
    return { kind: 'widths', widths };
  };

/** The ends of three lines whose doses fall from one to the next by a third, read to so many mm along the strip. */
const fadesOf =
  (sdMm: number): Reading =>
  (beam, ramp, random) => {
    const [focus, sine] = [alongAtMm(ramp, beam.gapMm), sineOf(ramp)];
    const strongest = 2.2 + 1.2 * random.uniform();
    const lines = [1, 0.7, 0.5].map((share) => {
      const half = fadesAwayMm(lineOf(beam, 0, Math.max(1.02, share * strongest))) / sine;
      const end = (mm: number): number | null =>
        mm < 0 || mm > stripMm ? null : Math.min(stripMm, Math.max(0, mm + sdMm * random.normal()));
      return { fromMm: end(focus - half), toMm: end(focus + half), dose: share };
    });
    return { kind: 'fades', lines };
  };

const strong = (random: SeededRandom): number => 6 + 24 * random.uniform();
const weak = (random: SeededRandom): number => 3 + 3 * random.uniform();

const ways: readonly { readonly name: string; readonly read: Reading; readonly share: number }[] = [
  {
    name: '12 widths, 5 % noise, a line that opens like the beam',
    read: widthsOf(12, 0.05, () => Infinity),
    share: 1,
  },
  {
    name: '12 widths, 5 % noise, a line 6 to 30 times the threshold',
    read: widthsOf(12, 0.05, strong),
    share: 1,
  },
  {
    name: '12 widths, 5 % noise, a line 3 to 6 times the threshold',
    read: widthsOf(12, 0.05, weak),
    share: 0.25,
  },
  { name: '8 widths, 5 % noise, 6 to 30 times', read: widthsOf(8, 0.05, strong), share: 0.25 },
  { name: '12 widths, 10 % noise, 6 to 30 times', read: widthsOf(12, 0.1, strong), share: 0.25 },
  { name: '3 lines fading, ends read to 2 mm', read: fadesOf(2), share: 1 },
  { name: '3 lines fading, ends read to 1 mm', read: fadesOf(1), share: 0.25 },
  { name: '3 lines fading, ends read to 4 mm', read: fadesOf(4), share: 0.25 },
];

const pct = (part: number, all: number): string => `${((100 * part) / all).toFixed(1)} %`;

const onRamp = (read: Reading, tests: number): string => {
  const random = seededRandom(40_811);
  let [inside, depthInside, depthTold, none] = [0, 0, 0, 0];
  const errors: number[] = [];
  for (let test = 0; test < tests; test += 1) {
    const beam = someBeam(random);
    const ramp = rampFor(beam, 0.5 * random.normal());
    const found = findFocus({ ramp, readings: read(beam, ramp, random) });
    if (!found.ok) {
      none += 1;
      continue;
    }
    const { gapMm, rayleighMm } = found.value;
    errors.push(Math.abs(gapMm.value - beam.gapMm));
    if (beam.gapMm >= gapMm.low && beam.gapMm <= gapMm.high) inside += 1;
    if (rayleighMm === null) continue;
    depthTold += 1;
    if (beam.rayleighMm >= rayleighMm.low && beam.rayleighMm <= rayleighMm.high) depthInside += 1;
  }
  errors.sort((a, b) => a - b);
  const rms = Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length);
  const at95 = errors[Math.floor(0.95 * errors.length)] ?? NaN;
  const within = errors.filter((error) => error <= 0.1).length;
  return (
    `focus off by ${rms.toFixed(3)} mm (rms), 19 in 20 by less than ${at95.toFixed(2)} mm, ${pct(within, errors.length)} by 0.1 mm or less; ` +
    `95 % interval holds it ${pct(inside, errors.length)}; depth told ${pct(depthTold, tests)}, held ${pct(depthInside, depthTold)}; no answer ${pct(none, tests)}`
  );
};

/** What is said where the focus really lies so far off the ramp. */
const offRamp = (read: Reading, byMm: number, tests: number): string => {
  const random = seededRandom(991);
  const said = new Map<string, number>();
  for (let test = 0; test < tests; test += 1) {
    const beam = someBeam(random);
    const centred = rampFor(beam, 0);
    const ramp = { ...centred, nozzleGapMm: centred.nozzleGapMm + centred.blockMm / 2 + byMm };
    const found: Outcome<FocusEstimate> = findFocus({ ramp, readings: read(beam, ramp, random) });
    const code = found.ok
      ? (found.value.remarks[0]?.code ?? 'found, nothing said')
      : found.problem.code;
    said.set(code, (said.get(code) ?? 0) + 1);
  }
  return [...said]
    .sort(([, a], [, b]) => b - a)
    .map(([code, times]) => `${code} ${pct(times, tests)}`)
    .join(', ');
};

/** Finding the focus, measured: one line a figure. */
export const focusBench = function* (tests: number): Generator<string> {
  yield 'finding the focus on a ramp of 120 mm set up to 0.5 mm (sd); lenses 38 to 64 mm, beams 6 to 8 mm, M² 1 to 1.4';
  for (const { name, read, share } of ways) {
    const count = Math.ceil(share * tests);
    yield `  ${String(count)} × ${name}: ${onRamp(read, count)} (targets 0.1 mm, 93 to 97 %)`;
  }
  for (const byMm of [1, 2]) {
    const read = widthsOf(12, 0.05, () => Infinity);
    const count = Math.ceil(tests / 8);
    yield `  ${String(count)} × focus ${String(byMm)} mm beyond the high end, widths: ${offRamp(read, byMm, count)}`;
    yield `  ${String(count)} × the same, fading ends: ${offRamp(fadesOf(2), byMm, count)}`;
  }
};
