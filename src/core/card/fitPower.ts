import { leastSteadyPct } from '../tube/deliveredPower.ts';
import { stepNotFaster } from '../machine/speedSteps.ts';
import { done, refused, type Outcome } from '../problem.ts';
import type { CardRequest } from './cardRequest.ts';
import { energyCeiling, energyRatio } from './ceiling.ts';
import type { CardProblem } from './cardProblem.ts';
import { reachOf } from './ladders.ts';

interface FittedPower {
  readonly request: CardRequest;
  readonly remarks: readonly CardProblem[];
}

/**
 * A request whose power lets the machine run fast enough for the sheet. Thin stock comes through at the machine's top speed
 * however it is cut: then the card takes the highest power at which the changeover lies within the speeds, down to what the
 * tube fires steadily at, and says so. Refuses where not even that is gentle enough (`card-machine-too-strong`).
 */
export const fitPower = (request: CardRequest): Outcome<FittedPower> => {
  const top = stepNotFaster(request.machine.speedRangeMmPerS[1]);
  const { powerPct: asked, believed } = request;
  if (request.rungs !== undefined) return done({ request, remarks: [] });
  const fastEnough = (powerPct: number, spareLn: number): boolean =>
    believed(powerPct).v50MmPerS * Math.exp(spareLn) <= top;
  if (fastEnough(asked, atLeastSpareLn)) return done({ request, remarks: [] });

  const least = Math.min(asked, leastSteadyPct(request.machine));
  const wholeLadder = (powerPct: number): boolean =>
    fastEnough(powerPct, reachOf(believed(powerPct).lnSd));
  const gentler = Array.from({ length: Math.max(0, Math.ceil(asked - least)) }, (_, i) =>
    Math.max(least, Math.ceil(asked) - 1 - i),
  );
  const powerPct = gentler.find(wholeLadder) ?? least;
  const { v50MmPerS, lnSd } = believed(powerPct);
  const times = energyRatio({ powerPct, passes: 1, speedMmPerS: top }, believed);
  const figures = { powerPct, mostMmPerS: top, times: Number(times.toPrecision(2)) };
  if (v50MmPerS * Math.exp(-lnSd) > top || times > energyCeiling)
    return refused('card-machine-too-strong', figures);
  const lowered: readonly CardProblem[] =
    powerPct < asked
      ? [{ code: 'card-power-lowered', params: { askedPct: asked, ...figures } }]
      : [];
  const strong: readonly CardProblem[] = fastEnough(powerPct, 0)
    ? []
    : [{ code: 'card-machine-strong-for-it', params: figures }];
  return done({ request: { ...request, powerPct }, remarks: [...lowered, ...strong] });
};

/** So far above the changeover, in ln speed, the machine must go for a card to show something that stays. */
const atLeastSpareLn = 0.1;
