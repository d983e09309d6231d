import type { Card } from '../../src/core/card/card.ts';
import { cardDrawing } from '../../src/core/card/cardDrawing.ts';
import { layerMoves } from '../../src/core/card/cardMoves.ts';
import { designCard } from '../../src/core/card/designCard.ts';
import { mistypedByTime } from '../../src/core/card/mistypedByTime.ts';
import { testShapeNames } from '../../src/core/card/testShapes.ts';
import { entriesOf } from '../../src/core/card/typeInList.ts';
import { slipKinds, slipsOf, type SlipKind } from '../../src/core/card/typingSlips.ts';
import type { Machine } from '../../src/core/machine/machine.ts';
import type { MotionValues } from '../../src/core/motion/motionValues.ts';
import type { Setting } from '../../src/core/machine/setting.ts';
import { fitMotion } from '../../src/core/motion/fitMotion.ts';
import type { JobMove } from '../../src/core/motion/jobTime.ts';
import { jobsToTime } from '../../src/core/motion/timedJobs.ts';
import { seededRandom, type SeededRandom } from '../../src/num/seededRandom.ts';
import { gentleStart, inventMotion, plain, type Controller } from './controllers.ts';

/** What became of cards with a simulated slip of one kind, or of none. */
export interface SlipsFound {
  readonly name: string;
  readonly cards: number;
  /** Slips that change the time by more than the verdict says would show. */
  readonly showing: number;
  /** The entry that was mistyped stands among the suspects; stands first; with the figure that was typed. */
  readonly named: number;
  readonly first: number;
  readonly figure: number;
  readonly namedOfShowing: number;
  /** Called mistyped though nothing was, or with an entry first that was typed right. */
  readonly wrong: number;
  /** Neither as expected nor called mistyped. */
  readonly unclear: number;
}

export interface SlipTrial {
  readonly name: string;
  readonly kind: SlipKind | 'none';
  readonly controller: (truth: MotionValues) => Controller;
}

/** Machines are fitted from six jobs timed with 1 % noise; a card's own time is told in whole seconds, 0.3 % from run to run. */
const jobNoise = 0.01;
const runNoise = 0.003;

export const slipTrials: readonly SlipTrial[] = [
  { name: 'typed right', kind: 'none', controller: plain },
  {
    name: 'typed right, acceleration rises over 50 ms',
    kind: 'none',
    controller: (truth) => gentleStart(truth, 0.05),
  },
  ...slipKinds.map((kind) => ({ name: kind, kind, controller: plain })),
];

/** One card on each of so many invented machines. */
export const measureSlips = (trial: SlipTrial, machines: number): SlipsFound => {
  const tally: Tally = {
    cards: 0,
    showing: 0,
    named: 0,
    first: 0,
    figure: 0,
    namedOfShowing: 0,
    wrong: 0,
    unclear: 0,
  };
  for (let seed = 1; seed <= machines; seed += 1) {
    const random = seededRandom(seed);
    const truth = inventMotion(random);
    const controller = trial.controller(truth);
    const machine = timedMachine(controller, random);
    if (machine !== undefined) {
      count(tally, inventCard(random), trial.kind, { truth, controller, machine, random });
    }
  }
  return { name: trial.name, ...tally };
};

type Tally = { -readonly [key in keyof Omit<SlipsFound, 'name'>]: number };

const timedMachine = (controller: Controller, random: SeededRandom): Machine | undefined => {
  const speedRangeMmPerS = [1, 100] as const;
  const fitted = fitMotion(
    jobsToTime({ speedRangeMmPerS }).map(({ moves }) => ({
      moves,
      seconds: controller(moves) * (1 + jobNoise * random.normal()),
    })),
  );
  return fitted.ok ? { maxPowerPct: 80, speedRangeMmPerS, motion: fitted.value.motion } : undefined;
};

const inventCard = (random: SeededRandom): Card => {
  const v50MmPerS = 8 + 22 * random.uniform();
  const designed = designCard({
    code: 'K7PX',
    vary: 'speed',
    powerPct: 34,
    cellsEach: 2 + random.integer(3),
    settingsAtMost: 6,
    shape: testShapeNames[random.integer(testShapeNames.length)] ?? 'star',
    sizeMm: 12 + random.integer(10),
    sheetMm: [300, 250],
    thicknessMm: 3,
    machine: { maxPowerPct: 80, speedRangeMmPerS: [1, 100] },
    believed: () => ({ v50MmPerS, lnSd: 0.3 }),
    scoring: { powerPct: 12, speedMmPerS: 40 + 10 * random.integer(6), passes: 1 },
    trusted: { powerPct: 34, speedMmPerS: Math.round(v50MmPerS * 1.2) / 2, passes: 1 },
    seed: random.integer(1000),
  });
  if (!designed.ok) throw new Error(designed.problem.code);
  return designed.value.card;
};

interface Around {
  readonly truth: MotionValues;
  readonly controller: Controller;
  readonly machine: Machine;
  readonly random: SeededRandom;
}

const count = (tally: Tally, card: Card, kind: SlipTrial['kind'], around: Around): void => {
  const { truth, controller, machine, random } = around;
  const slip = kind === 'none' ? undefined : inventSlip(card, kind, random);
  if (kind !== 'none' && slip === undefined) return;
  const right = controller(movesOf(card, truth));
  const taken = slip === undefined ? right : controller(movesOf(card, truth, slip));
  const told = Math.round(taken * (1 + runNoise * random.normal()));
  const { verdict, suspects, showsFromSeconds } = mistypedByTime(card, told, { machine });
  const showing = Math.abs(taken - right) > showsFromSeconds;
  const named = suspects.find(({ label }) => label === slip?.label);
  const isFirst = named !== undefined && named === suspects[0];
  const isFigure = named?.probably.speedMmPerS === slip?.setting.speedMmPerS;
  tally.cards += 1;
  tally.showing += Number(showing);
  tally.named += Number(named !== undefined);
  tally.first += Number(isFirst);
  tally.figure += Number(named !== undefined && isFigure);
  tally.namedOfShowing += Number(showing && named !== undefined);
  tally.wrong += Number(verdict === 'mistyped' && !isFirst);
  tally.unclear += Number(verdict === 'unclear');
};

interface MadeSlip {
  readonly label: string;
  readonly colour: string;
  readonly setting: Setting;
}

const inventSlip = (card: Card, kind: SlipKind, random: SeededRandom): MadeSlip | undefined => {
  const entries = entriesOf(card);
  const possible = entries.flatMap(({ label, colour, setting }, i): readonly MadeSlip[] => {
    const before = entries[i - 1]?.setting;
    if (setting === undefined) return [];
    return slipsOf(setting.speedMmPerS, before === undefined ? [] : [before.speedMmPerS])
      .filter((slip) => slip.kind === kind)
      .map(({ value }) => ({
        label,
        colour,
        setting: { ...setting, speedMmPerS: Math.min(value, 100) },
      }));
  });
  // The entry first, so that one with many ways to be wrong is no likelier to be it.
  const labels = [...new Set(possible.map(({ label }) => label))];
  const label = labels[random.integer(Math.max(1, labels.length))];
  const own = possible.filter((slip) => slip.label === label);
  return own[random.integer(Math.max(1, own.length))];
};

const movesOf = (card: Card, motion: MotionValues, slip?: MadeSlip): readonly JobMove[] =>
  cardDrawing(card).layers.flatMap((layer) =>
    layerMoves(layer, motion, layer.colour === slip?.colour ? slip.setting : layer.setting),
  );
