import { answerSpeed } from '../../src/core/cutmodel/answerSpeed.ts';
import type { CutStudy, StudyCell } from '../../src/core/cutmodel/cutStudy.ts';
import { links, type Link } from '../../src/core/cutmodel/links.ts';
import { priorMedianV50MmPerS } from '../../src/core/cutmodel/priors.ts';
import { nearestStep } from '../../src/core/machine/speedSteps.ts';
import type { Grade } from '../../src/core/reading/grade.ts';
import type { Tally } from '../../src/core/reading/tally.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';

/** A study with orders that were counted, and one order more. */
export interface CountedStudy {
  readonly before: CutStudy;
  readonly order: Tally;
}

/** How one invented stock cuts on one invented machine. */
interface Stock {
  readonly powerPct: number;
  readonly lnV50: number;
  readonly link: Link;
  readonly sigma: number;
  readonly hangBand: number;
  readonly sheetSd: number;
  readonly flawsPerMetre: number;
}

/** What an order may be, beside what its stock and its speed make of it. */
const luck = [
  { kind: 'as-the-stock', of100: 55 },
  /** Another delivery, or a dirty lens: all of it cuts otherwise. */
  { kind: 'shifted', of100: 20 },
  /** Counted as nobody would expect it of any stock. */
  { kind: 'unlike', of100: 15 },
  /** Pockets everywhere. */
  { kind: 'pockets', of100: 10 },
] as const;

type Luck = (typeof luck)[number]['kind'];

const partsOnSheet = 30;
const seenOfFlaws = 0.8;
const powerPct = 34;

/**
 * A stock of 2 to 9 mm, none to three cards of it, none to three orders of 10 to 5,000 parts of 20 to 2,000 mm, good, bad
 * and in conflict, and one order more. The promise is of the parts that are cut.
 */
export const drawCounted = (random: SeededRandom): CountedStudy => {
  const thicknessMm = 2 + random.integer(8);
  const stock = drawStock(random, thicknessMm);
  const partLengthMm = Math.round(20 * 100 ** random.uniform());
  const outOf100 = [97, 97, 97, 99, 90][random.integer(5)] ?? 97;
  const cards = random.integer(8) === 0 ? 0 : 1 + random.integer(3);
  const earlier = random.integer(4);
  const byCard = Array.from({ length: cards }, (_, k) => drawCard(random, stock, k));
  const about = { random, stock, partLengthMm, share: outOf100 / 100 };
  const tallies = Array.from({ length: earlier }, () => drawOrder(about));
  return {
    before: {
      machine: { maxPowerPct: 80, speedRangeMmPerS: [0.1, 500] },
      stock: { material: 'plywood', thicknessMm },
      cells: byCard.flat(),
      tallies,
      promise: { outOf100, surePct: 95, partLengthMm, for: 'batch' },
      ask: { powerPct },
    },
    order: drawOrder(about),
  };
};

const drawStock = (random: SeededRandom, thicknessMm: number): Stock => ({
  powerPct,
  lnV50:
    Math.log(priorMedianV50MmPerS('plywood', thicknessMm, powerPct / 100)) + 0.5 * random.normal(),
  link: links[random.integer(links.length)] ?? fallbackLink,
  sigma: 0.08 * Math.exp(0.4 * random.normal()),
  hangBand: 0.06 * Math.exp(0.6 * random.normal()),
  sheetSd: 0.03 * Math.abs(random.normal()),
  flawsPerMetre: random.integer(3) === 0 ? 0 : -0.15 * Math.log(random.uniform()),
});

const [normalLink] = links;
if (normalLink === undefined) throw new Error('there are links');
const fallbackLink: Link = normalLink;

/** Six to twenty-four cells across the changeover as it was guessed. */
const drawCard = (random: SeededRandom, stock: Stock, k: number): readonly StudyCell[] => {
  const centre = stock.lnV50 + 0.12 * random.normal();
  const level = stock.lnV50 + stock.sheetSd * random.normal();
  const rungs = 4 + random.integer(5);
  const each = 1 + random.integer(3);
  return Array.from({ length: rungs * each }, (_, i): StudyCell => {
    const place = (i % rungs) / (rungs - 1) - 0.5;
    const speedMmPerS = nearestStep(Math.exp(centre + 0.6 * place));
    const grade = drawGrade(random, stock, { level, speedMmPerS, lengthMm: 60 });
    return {
      powerPct,
      speedMmPerS,
      passes: 1,
      sheet: `card ${String(k + 1)}`,
      grade: grade === 'flaw' ? (random.uniform() < 0.5 ? 'hangs' : 'stays') : grade,
    };
  });
};

interface OrderOf {
  readonly random: SeededRandom;
  readonly stock: Stock;
  readonly partLengthMm: number;
  readonly share: number;
}

const drawOrder = ({ random, stock, partLengthMm, share }: OrderOf): Tally => {
  const kind = drawLuck(random);
  const parts = Math.round(10 * 500 ** random.uniform());
  const lengths = Math.max(1, partLengthMm / 60);
  const keeping = stock.lnV50 - stock.sigma * marginKeeping(stock.link, share ** (1 / lengths));
  const speedMmPerS = Math.max(0.2, answerSpeed(Math.exp(keeping + 0.12 * random.normal())));
  const shift = kind === 'shifted' ? 0.25 * random.normal() : 0;
  const flaws = kind === 'pockets' ? 8 * stock.flawsPerMetre + 1 : stock.flawsPerMetre;
  const counts = { out: 0, hangs: 0, stays: 0, spoilt: 0 };
  const unlike = random.uniform() ** 2;
  let sheet = 0;
  for (let i = 0; i < parts; i += 1) {
    if (i % partsOnSheet === 0) sheet = stock.lnV50 + shift + stock.sheetSd * random.normal();
    const fell =
      kind === 'unlike'
        ? random.uniform() < unlike
          ? random.uniform() < 0.5
            ? 'hangs'
            : 'stays'
          : 'out'
        : drawGrade(
            random,
            { ...stock, flawsPerMetre: flaws },
            { level: sheet, speedMmPerS, lengthMm: partLengthMm },
          );
    if (fell !== 'flaw') counts[fell] += 1;
    else if (random.uniform() < seenOfFlaws) counts.spoilt += 1;
    else counts[random.uniform() < 0.5 ? 'hangs' : 'stays'] += 1;
  }
  return { setting: { powerPct, speedMmPerS, passes: 1 }, ...counts, partLengthMm };
};

const drawLuck = (random: SeededRandom): Luck => {
  let left = random.integer(100);
  for (const { kind, of100 } of luck) {
    if (left < of100) return kind;
    left -= of100;
  }
  return 'as-the-stock';
};

const drawGrade = (
  random: SeededRandom,
  { link, sigma, hangBand, flawsPerMetre }: Stock,
  cut: { readonly level: number; readonly speedMmPerS: number; readonly lengthMm: number },
): Grade | 'flaw' => {
  if (random.uniform() > Math.exp((-flawsPerMetre * cut.lengthMm) / 1000)) return 'flaw';
  const margin = cut.level - Math.log(cut.speedMmPerS);
  const lengths = Math.max(1, cut.lengthMm / 60);
  const u = random.uniform();
  if (u < link.cdf(margin / sigma) ** lengths) return 'out';
  return u < link.cdf((margin + hangBand) / sigma) ** lengths ? 'hangs' : 'stays';
};

/** The margin, in σ, at which one reference length comes out so often. */
const marginKeeping = (link: Link, share: number): number => {
  let [low, high] = [-5, 60];
  for (let step = 0; step < 50; step += 1) {
    const middle = 0.5 * (low + high);
    if (link.cdf(middle) < share) low = middle;
    else high = middle;
  }
  return low;
};
