import { z } from 'zod';
import { edgesOf } from '../core/reading/edge.ts';
import { settingShape } from '../formats/saved/setting.ts';
import { earlierCount, earlierSheetsWish } from './history.ts';
import { standingReply } from './standing.ts';
import { saidProblem } from './problem.ts';

const meanSd = z.object({ mean: z.number(), sd: z.number() });
const forecast = z.object({
  powerPct: z.number(),
  speedMmPerS: z.number(),
  outOf100Mean: z.number(),
  sureOfPromisePct: z.number(),
});

const edgeShare = z.object({ meanOf100: z.number(), atLeastOf100: z.number() });

/** The answer as `calc fit` prints it. */
export const fitReply = z.object({
  version: z.literal(1),
  posterior: z.object({
    lnV50At: meanSd.extend({ powerPct: z.number() }),
    powerExponent: meanSd,
    sigma: meanSd,
    hangBand: meanSd,
    flawsPerMetre: meanSd,
    sheetSd: meanSd,
    cornersExponent: meanSd.exactOptional(),
  }),
  recommended: z
    .object({
      powerPct: z.number(),
      speedMmPerS: z.number(),
      passes: z.number(),
      air: settingShape.shape.air,
      outOf100: z.number(),
      surePct: z.number(),
      outOf100Mean: z.number(),
      sureAtSpeedPct: z.number(),
      guess: z.boolean(),
    })
    .nullable(),
  reason: saidProblem.exactOptional(),
  oneStepSurer: forecast.exactOptional(),
  oneStepFaster: forecast.exactOptional(),
  evenOdds: z.object({ powerPct: z.number(), speedMmPerS: z.number() }).exactOptional(),
  onThisSheet: z.object({ powerPct: z.number(), speedMmPerS: z.number() }).exactOptional(),
  asked: forecast.exactOptional(),
  morePasses: z
    .object({
      passes: z.number(),
      powerPct: z.number(),
      speedMmPerS: z.number(),
      quickerPct: z.number().nullable(),
    })
    .exactOptional(),
  corners: z.object({ speedMmPerS: z.number(), leastMinPowerPct: z.number() }).exactOptional(),
  edge: z
    .object({
      best: z.enum([edgesOf.wood[0], edgesOf.acrylic[0]]),
      taped: z.boolean(),
      edges: z.number().int(),
      wanted: z.number().int(),
      here: edgeShare.nullable(),
      preferred: forecast
        .extend(edgeShare.shape)
        .extend({ passes: z.number(), secondsMore: z.number() })
        .exactOptional(),
    })
    .exactOptional(),
  line: z.array(
    z.object({
      powerPct: z.number(),
      speedMmPerS: z.number(),
      currentMa: z.number().exactOptional(),
    }),
  ),
  changeover: z.array(
    z.object({
      powerPct: z.number(),
      v50MmPerS: z.number(),
      lowMmPerS: z.number(),
      highMmPerS: z.number(),
    }),
  ),
  powerLimit: z.object({ powerPct: z.number(), because: z.enum(['machine', 'rated-current']) }),
  remarks: z.array(
    z.object({
      cellIndex: z.number().int(),
      kind: z.enum(['look-again', 'told-nothing', 'overdriven']),
      probability: z.number(),
    }),
  ),
  warnings: z.array(saidProblem),
  /** How the sheet stands by its cards and orders. */
  standing: standingReply.exactOptional(),
  convergence: z.object({
    ok: z.boolean(),
    points: z.number(),
    effectivePoints: z.number(),
    linkProbabilities: z.object({
      normal: z.number(),
      logistic: z.number(),
      student3: z.number(),
    }),
  }),
});

/** The answer of a stored study: what earlier sheets of the same material taught is in it. */
export const studyAnswerReply = fitReply.extend({ leansOn: earlierCount });

export const studyAnswerQuery = z.strictObject(earlierSheetsWish);

/** The next card as `calc nextcard` prints it. */
export const nextCardReply = z.object({
  cells: z.array(
    z.object({
      powerPct: z.number(),
      speedMmPerS: z.number(),
      passes: z.number(),
      rung: z.string(),
    }),
  ),
  settings: z.number().int(),
  expectedGainPct: z.number(),
  fastestNowMmPerS: z.number().nullable(),
  worthCutting: z.boolean(),
  /** What is to be said of the material. */
  warnings: z.array(saidProblem),
  reason: z.string(),
  reasonCode: z.string(),
});

export const nextCardQuery = z.strictObject({
  ...earlierSheetsWish,
  cellsWanted: z.coerce.number().int().min(1).max(200).exactOptional(),
  settingsAtMost: z.coerce.number().int().min(1).max(60).exactOptional(),
});

/** A study file, checked by the parser that the command line uses. */
export const studyFileBody = z.record(z.string(), z.unknown());
