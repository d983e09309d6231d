import { z } from 'zod';
import { differences } from '../core/compare/twoConditions.ts';
import { code, id, label } from '../formats/saved/bounds.ts';
import { settingShape } from '../formats/saved/setting.ts';
import { saidProblem } from './problem.ts';

const piece = z.strictObject({ studyId: id, card: code, air: label.exactOptional() });
const pieces = z.array(piece).min(1).max(50);
const sharePct = z.number().min(0).max(50);

export const compareBody = z.strictObject({
  differs: z.enum(differences),
  one: pieces,
  other: pieces,
  oneSheet: z.boolean().exactOptional(),
  worthPct: sharePct.exactOptional(),
  tellPct: sharePct.min(0.5).exactOptional(),
});

/** A file of two conditions, checked by the parser that the command line uses. */
export const compareFileBody = z.record(z.string(), z.unknown());

const sideRead = z.object({
  cells: z.number().int(),
  out: z.number().int(),
  air: settingShape.shape.air,
  batch: z.string().exactOptional(),
  machine: z.string().exactOptional(),
});
const count = z.number().int();

const exact = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('paired'),
    pairs: count,
    onlyOneOut: count,
    onlyOtherOut: count,
    unpaired: count,
    p: z.number(),
  }),
  z.object({
    kind: z.literal('unpaired'),
    table: z.object({ a: count, b: count, c: count, d: count }),
    p: z.number(),
  }),
  z.object({ kind: z.literal('no-difference-seen'), pairs: count }),
  z.object({ kind: z.literal('no-setting-in-common') }),
]);

/** A comparison as `calc compare` prints it. Gains are of the other against the one, in per cent of speed. */
export const comparisonReply = z.object({
  said: z.object({
    sentence: z.string(),
    exact: z.string(),
    howMany: z.string(),
    card: z.string(),
  }),
  version: z.literal(1),
  differs: z.enum(differences),
  gainPct: z.object({ middle: z.number(), low: z.number(), high: z.number() }),
  chances: z.object({ gains: z.number(), loses: z.number(), neither: z.number() }),
  worthPct: z.number(),
  tellPct: z.number(),
  sheets: z.enum(['common', 'partly', 'own']),
  read: z.object({ one: sideRead, other: sideRead }),
  exact,
  settling: z.object({
    settings: z.array(settingShape),
    cellsASide: count.nullable(),
    moreASide: count.nullable(),
    onOwnSheets: count.nullable(),
  }),
  remarks: z.array(saidProblem),
  convergence: z.object({ points: count, effectivePoints: count }),
});
