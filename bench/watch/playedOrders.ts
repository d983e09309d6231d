import { links, type Link } from '../../src/core/cutmodel/links.ts';
import { foreseenLevel } from '../../src/core/watch/foreseenLevel.ts';
import { watchedOrder, type Foreseen, type Watched } from '../../src/core/watch/watched.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';

/** An invented setting in the book, and what is true of it. */
export interface Kept {
  readonly foreseen: Foreseen;
  /** ln of the changeover's speed over the proven speed. */
  readonly margin: number;
  readonly sigma: number;
  readonly sheetSd: number;
  readonly link: Link;
}

/** How the truth is drawn: as the book believes, or otherwise. */
export interface KeptTraits {
  readonly name: string;
  readonly link: Link['name'];
  /** Of an order; drawn evenly in its logarithm. */
  readonly parts: readonly [number, number];
  /** Of the level against what the book believes, in units of the scatter. */
  readonly better: number;
  /** Share of parts that meet a pocket and are counted as needing the knife. */
  readonly flaws: number;
}

export const drawKept = ({ link, better }: KeptTraits, random: SeededRandom): Kept => {
  const found = links.find(({ name }) => name === link);
  if (found === undefined) throw new Error(`no link ${link}`);
  const foreseen: Foreseen = {
    setting: { powerPct: 30, speedMmPerS: 14, passes: 1 },
    promise: { outOf100: 97, surePct: 95, partLengthMm: 60, for: 'batch' },
    outOf100Mean: 98.3 + 1.2 * random.uniform(),
    surePct: 92 + 6 * random.uniform(),
  };
  const { mean, sd } = foreseenLevel(foreseen);
  const sigma = 0.08 * Math.exp(0.4 * random.normal());
  const sheetSd = 0.04 * Math.abs(random.normal());
  // The level is of the share on average: with normal scatter √(σ² + ω²) is its unit.
  const level = mean + better + sd * random.normal();
  return { foreseen, margin: level * Math.hypot(sigma, sheetSd), sigma, sheetSd, link: found };
};

/** One order on a sheet of its own, cut slower by a share of speed. Thousandths of a part do not matter. */
export const playOrder = (
  { margin, sigma, sheetSd, link }: Kept,
  { parts: [least, most], flaws }: KeptTraits,
  given: { readonly n: number; readonly lossShare: number },
  random: SeededRandom,
): readonly Watched[] => {
  const parts = Math.round(least * (most / least) ** random.uniform());
  const here = margin + sheetSd * random.normal() + Math.log1p(-given.lossShare);
  const share = link.cdf(here / sigma) * (1 - flaws);
  const out = binomial(parts, share, random);
  return watchedOrder({
    id: `order ${String(given.n)}`,
    at: '2031-05-06T07:08:09.000Z',
    setting: { powerPct: 30, speedMmPerS: 14, passes: 1 },
    out,
    hangs: parts - out,
    stays: 0,
    spoilt: 0,
    partLengthMm: 60,
  });
};

const binomial = (n: number, share: number, random: SeededRandom): number => {
  let out = 0;
  for (let part = 0; part < n; part += 1) if (random.uniform() < share) out += 1;
  return out;
};
