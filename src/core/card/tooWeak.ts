import { normalCdf } from '../../num/normal.ts';
import type { Setting } from '../machine/setting.ts';
import { problemOf, type Problem } from '../problem.ts';
import { powerLimit } from '../tube/deliveredPower.ts';
import type { CardProblem } from './cardProblem.ts';
import type { CardRequest } from './cardRequest.ts';
import { passExponent } from './ladders.ts';

/** Below this chance that even its strongest shapes come out a card is not made: nothing of it would fall, and nothing be learnt. */
const leastChance = 0.1;
/** And below this one it is said. */
const fairChance = 1 / 3;
/** More passes char rather than cut. From memory, common practice. */
const mostPasses = 4;

interface Weak {
  /** No card. Not of settings that a person has said outright, who may know better. */
  readonly problem?: Problem;
  readonly remarks: readonly CardProblem[];
}

/**
 * Whether the strongest settings of a card are too weak for the sheet, as far as anybody knows before it is cut; and what would help:
 * more power within the machine's limits, a few passes, or neither.
 */
export const tooWeak = (request: CardRequest, settings: readonly Setting[]): Weak => {
  const chances = settings.map((setting) => chanceOut(request, setting));
  const best = chances.indexOf(Math.max(...chances));
  const [chance, strongest] = [chances[best], settings[best]];
  if (chance === undefined || strongest === undefined || chance >= fairChance)
    return { remarks: [] };
  const { powerPct, speedMmPerS, passes } = strongest;
  const figures = { powerPct, speedMmPerS, passes, ...whatHelps(request, strongest) };
  return chance < leastChance && request.rungs === undefined
    ? { problem: problemOf('card-machine-too-weak', figures), remarks: [] }
    : { remarks: [{ code: 'card-machine-weak-for-it', params: figures }] };
};

/** The chance that half the shapes at a setting come out, by what is believed of the sheet. */
const chanceOut = (
  { believed }: CardRequest,
  { powerPct, speedMmPerS, passes }: Pick<Setting, 'powerPct' | 'speedMmPerS' | 'passes'>,
): number => {
  const { v50MmPerS, lnSd } = believed(powerPct);
  return normalCdf(Math.log((v50MmPerS * passes ** passExponent) / speedMmPerS) / lnSd);
};

/** The least power, else the fewest passes at full power, at which it is as likely as not to come through at the slowest speed. */
const whatHelps = (
  request: CardRequest,
  { powerPct, passes }: Setting,
): {
  readonly helps: 'power' | 'passes' | 'nothing';
  readonly atPct: number;
  readonly times: number;
} => {
  const [slowest] = request.machine.speedRangeMmPerS;
  const isLikely = (atPct: number, times: number): boolean =>
    chanceOut(request, { powerPct: atPct, speedMmPerS: slowest, passes: times }) >= 0.5;
  const fullPct = Math.floor(powerLimit(request.machine).powerPct);
  for (let atPct = Math.ceil(powerPct) + 1; atPct <= fullPct; atPct += 1)
    if (isLikely(atPct, passes)) return { helps: 'power', atPct, times: passes };
  const atPct = Math.max(powerPct, fullPct);
  for (let times = passes + 1; times <= mostPasses; times += 1)
    if (isLikely(atPct, times)) return { helps: 'passes', atPct, times };
  return { helps: 'nothing', atPct, times: mostPasses };
};
