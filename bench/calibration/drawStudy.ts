import { compileStudy } from '../../src/core/cutmodel/compileStudy.ts';
import type { CutStudy, StudyCell } from '../../src/core/cutmodel/cutStudy.ts';
import type { Link } from '../../src/core/cutmodel/links.ts';
import { links } from '../../src/core/cutmodel/links.ts';
import { parameterLayout, type Observation } from '../../src/core/cutmodel/model.ts';
import {
  blankParameters,
  readParameters,
  type Parameters,
} from '../../src/core/cutmodel/parameters.ts';
import { priorMedianV50MmPerS, priors } from '../../src/core/cutmodel/priors.ts';
import type { Grade } from '../../src/core/reading/grade.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';

/** A study whose truth came from the model's own prior. */
export interface DrawnStudy {
  readonly study: CutStudy;
  readonly truth: Parameters;
  readonly link: Link['name'];
}

const powerPct = 30;
const thicknessMm = 3;
const sheets = 3;
const cellsOnSheet = 8;
const tallyCount = 40;
const grades: readonly Grade[] = ['out', 'hangs', 'stays'];

/** Eight speeds from 0.35 to 2.9 times the prior median at three powers, a sheet for each third: the same for every truth. */
const designAbout = (middleMmPerS: number): readonly StudyCell[] =>
  Array.from({ length: sheets * cellsOnSheet }, (_, i) => {
    const lnFactor = (2.1 * (i % (sheets * cellsOnSheet))) / (sheets * cellsOnSheet - 1) - 1.05;
    return {
      powerPct: powerPct + 6 * ((Math.floor(i / sheets) % 3) - 1),
      speedMmPerS: middleMmPerS * Math.exp(lnFactor),
      passes: 1,
      sheet: `sheet ${String(i % sheets)}`,
      grade: 'out' as const,
    };
  });

/**
 * Draws parameters through the model's own N(0, I) and then plays what they say, from the model's written statement and not
 * from its likelihood: noise on the margin, pockets, misread grades. Every fourth study has a tally of an order too, in
 * which four pockets in five are counted as such and the fifth by how the part fell.
 */
export const drawStudy = (random: SeededRandom, withTally: boolean): DrawnStudy => {
  const middle = priorMedianV50MmPerS('plywood', thicknessMm, powerPct / 100);
  const blank: CutStudy = {
    machine: { maxPowerPct: 90, speedRangeMmPerS: [0.1, 500] },
    stock: { material: 'plywood', thicknessMm },
    cells: designAbout(middle),
    tallies: withTally
      ? [
          {
            setting: { powerPct, speedMmPerS: 0.75 * middle, passes: 1 },
            out: tallyCount,
            hangs: 0,
            stays: 0,
            spoilt: 0,
            partLengthMm: 150,
          },
        ]
      : [],
    promise: { outOf100: 97, surePct: 95, partLengthMm: 60, for: 'batch' },
    ask: { powerPct },
  };
  const { model, observationOfCell } = compileStudy(blank);
  const layout = parameterLayout(model);
  const truth = blankParameters();
  let z = new Float64Array(layout.size);
  do {
    z = Float64Array.from(z, () => random.normal());
    readParameters(z, layout, model.priors, truth);
  } while (truth.powerExponent <= 0);
  const link = drawLink(random);

  const fallOf = (o: Observation): Grade | 'flaw' => {
    const margin =
      truth.lnV50 +
      truth.powerExponent * o.lnPower +
      truth.sheetSd * (z[layout.sheet + o.sheet] ?? 0) -
      o.lnSpeed;
    return trueFall(random, link, margin, o, truth);
  };
  const gradeOf = (o: Observation): Grade =>
    misread(random, asFell(random, fallOf(o)), priors.misreading);
  const countedAs = (o: Observation): Grade | 'spoilt' => {
    const fall = fallOf(o);
    return fall === 'flaw' && random.uniform() >= priors.flawsOverlooked
      ? 'spoilt'
      : misread(random, asFell(random, fall), priors.miscounting);
  };
  const cells = blank.cells.map((cell, i): StudyCell => {
    const observation = model.observations[observationOfCell[i] ?? -1];
    if (observation === undefined) throw new Error('a cell of the design became no observation');
    return { ...cell, grade: gradeOf(observation) };
  });
  const ofOrder = model.observations.find(({ count }) => count === tallyCount);
  const tallies = blank.tallies.map((tally) => {
    const read = Array.from({ length: tallyCount }, () => (ofOrder ? countedAs(ofOrder) : 'out'));
    const counted = (as: Grade | 'spoilt'): number => read.filter((one) => one === as).length;
    return {
      ...tally,
      out: counted('out'),
      hangs: counted('hangs'),
      stays: counted('stays'),
      spoilt: counted('spoilt'),
    };
  });
  return { study: { ...blank, cells, tallies }, truth, link: link.name };
};

const drawLink = (random: SeededRandom): Link => {
  const u = random.uniform();
  let reached = 0;
  for (const link of links) {
    reached += priors.links[link.name];
    if (u < reached) return link;
  }
  throw new Error('the links’ weights do not add up to 1');
};

/** A cut of L reference lengths comes out with F(m/σ)ᴸ, comes out or hangs with F((m + g)/σ)ᴸ; a pocket overrules it. */
const trueFall = (
  random: SeededRandom,
  link: Link,
  margin: number,
  o: Observation,
  truth: Parameters,
): Grade | 'flaw' => {
  if (random.uniform() < 1 - Math.exp(-truth.flawsPerMetre * o.lengthM)) return 'flaw';
  const u = random.uniform();
  if (u < link.cdf(margin / truth.sigma) ** o.lengths) return 'out';
  return u < link.cdf((margin + truth.hangBand) / truth.sigma) ** o.lengths ? 'hangs' : 'stays';
};

const asFell = (random: SeededRandom, fall: Grade | 'flaw'): Grade =>
  fall !== 'flaw' ? fall : random.uniform() < 0.5 ? 'hangs' : 'stays';

const misread = (random: SeededRandom, grade: Grade, rate: number): Grade => {
  if (random.uniform() >= rate) return grade;
  const others = grades.filter((one) => one !== grade);
  return others[random.integer(2)] ?? grade;
};
