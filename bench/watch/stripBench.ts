import { fit } from '../../src/core/cutmodel/fit.ts';
import { speedAt } from '../../src/core/cutmodel/recommend.ts';
import type { CutStudy } from '../../src/core/cutmodel/cutStudy.ts';
import {
  ordinaryTraits,
  virtualWorkshop,
  type VirtualWorkshop,
  type WorkshopTraits,
} from '../../src/core/virtual/virtualWorkshop.ts';
import { stripSettings } from '../../src/core/watch/stripSettings.ts';
import { stripVerdict } from '../../src/core/watch/stripVerdict.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { cutBoard, cutCells, median, pct } from './cutStrips.ts';

/** What the workshop has of earlier cells: so many boards of twelve, of so many batches. */
interface Past {
  readonly name: string;
  readonly boards: number;
  readonly batches: number;
  readonly link?: WorkshopTraits['link'];
  readonly batchSd: number;
}

const pasts: readonly Past[] = [
  { name: '60 old cells of one batch', boards: 5, batches: 1, batchSd: 0.06 },
  { name: '60 old cells of three batches', boards: 5, batches: 3, batchSd: 0.06 },
  { name: '24 old cells of one batch', boards: 2, batches: 1, batchSd: 0.06 },
  { name: '60 old cells, batches that differ twice as much', boards: 5, batches: 3, batchSd: 0.12 },
  {
    name: '60 old cells, heavy tails',
    boards: 5,
    batches: 1,
    batchSd: 0.06,
    link: 'student3',
  },
];

const wantedShare = 0.97;

interface Played {
  readonly kind: string;
  /** The speed that the verdict ends with, over the fastest that keeps the share on the new batch. */
  readonly ratio: number | null;
  readonly kept: boolean | null;
  /** Whether the proven setting really keeps its share on the new batch, and how it stands to the fastest. */
  readonly provenKeeps: boolean;
  readonly provenRatio: number;
  readonly cells: number;
}

const play = (past: Past, seed: number): Played | null => {
  const random = seededRandom(seed);
  const ordinary = ordinaryTraits(random);
  const traits = past.link === undefined ? ordinary : { ...ordinary, link: past.link };
  const batchShop = (): VirtualWorkshop =>
    virtualWorkshop(
      { ...traits, v50MmPerS: traits.v50MmPerS * Math.exp(past.batchSd * random.normal()) },
      random,
    );
  const shops = Array.from({ length: past.batches }, batchShop);
  const old = Array.from({ length: past.boards }, (_, n) => {
    // The newest batch comes last: the proven setting is of it.
    const k = Math.floor((n * past.batches) / past.boards);
    const shop = shops[k];
    if (shop === undefined) throw new Error('a board without a batch');
    return cutBoard(shop, { batch: `old ${String(k)}`, sheet: `board ${String(n)}` }, random);
  }).flat();
  const powerPct = traits.typicalPowerPct;
  const study: CutStudy = {
    machine: { maxPowerPct: 90, speedRangeMmPerS: [0.5, 200] },
    stock: { material: traits.material, thicknessMm: traits.thicknessMm },
    cells: old,
    tallies: [],
    promise: { outOf100: 100 * wantedShare, surePct: 95, partLengthMm: 60, for: 'batch' },
    ask: { powerPct },
  };
  const kept = speedAt(fit(study), powerPct);
  if (kept === null) return null;
  const proven = { powerPct, speedMmPerS: kept, passes: 1 };
  const fresh = batchShop();
  const before: CutStudy = { ...study, cells: [], history: old };
  const settings = stripSettings(fit(before), proven);
  const order = random.shuffle(settings);
  const cells = cutCells(fresh, order, { batch: 'new', sheet: 'strip' });
  const verdict = stripVerdict(fit({ ...before, cells }), proven);
  const fastest = fresh.fastestKeeping(wantedShare, powerPct);
  const ends = verdict.kind === 'as-before' || verdict.kind === 'retune' ? verdict : null;
  const speed = ends?.setting.speedMmPerS;
  return {
    kind: verdict.kind === 'retune' ? `retune ${verdict.which}` : verdict.kind,
    ratio: speed === undefined ? null : speed / fastest,
    kept: speed === undefined ? null : speed <= fastest * (1 + 1e-9),
    provenKeeps: kept <= fastest,
    provenRatio: kept / fastest,
    cells: settings.length,
  };
};

/** Check strips of six cells on a new batch, measured. */
export const stripBench = function* (runs: number): Generator<string> {
  yield 'check strips of six cells on a new batch';
  for (const past of pasts) {
    const played = Array.from({ length: runs }, (_, k) => play(past, 40_000 + k)).filter(
      (one) => one !== null,
    );
    const answered = played.filter((one) => one.ratio !== null);
    const keeps = answered.filter(({ kept }) => kept === true).length;
    yield `  ${String(played.length)} × ${past.name}: speed ratio ${median(answered.map(({ ratio }) => ratio ?? NaN)).toFixed(3)}, kept ${pct(keeps, answered.length)}, answered ${pct(answered.length, played.length)}; the proven setting as it stands: ${median(played.map((one) => one.provenRatio)).toFixed(3)}, keeps ${pct(played.filter((one) => one.provenKeeps).length, played.length)}`;
    for (const kind of ['as-before', 'retune slower', 'retune faster', 'cut-a-card']) {
      const of = played.filter((one) => one.kind === kind);
      const right = of.filter(({ kept }) => kept === true).length;
      const ratio =
        kind === 'cut-a-card'
          ? ''
          : `, kept ${pct(right, of.length)}, ratio ${median(of.map((one) => one.ratio ?? NaN)).toFixed(3)}`;
      yield `    ${kind}: ${pct(of.length, played.length)}${ratio}; of them the proven setting keeps ${pct(of.filter((one) => one.provenKeeps).length, of.length)}`;
    }
  }
};
