import { leastSteadyPct, powerLimit } from '../tube/deliveredPower.ts';
import type { Setting } from '../machine/setting.ts';
import { slowestAllowed } from './ceiling.ts';
import { rungsLeft } from './checkRequest.ts';
import type { CardRequest } from './cardRequest.ts';
import { cornersLadder } from './cornersLadder.ts';
import { nearestStep, nextStep, stepNotFaster, stepNotSlower } from '../machine/speedSteps.ts';

/** As many values, evenly spaced in ln from `low` to `high`; one alone lies in the middle. */
const spaced = (count: number, low: number, high: number): readonly number[] =>
  count === 1
    ? [Math.sqrt(low * high)]
    : Array.from({ length: count }, (_, i) => low * (high / low) ** (i / (count - 1)));

/** The highest whole power setting that a ladder goes to: overdrive is never proposed. */
const mostPowerPct = ({ machine }: CardRequest): number => Math.floor(powerLimit(machine).powerPct);

/**
 * How far a ladder reaches in ln speed either way: 1.3 sd of what is believed, at least 0.2 (18 %); where little is known
 * further, so that a first card straddles the changeover nine times in ten on a tube of 40 W as on one of 130 W; at most 1.25.
 */
export const reachOf = (lnSd: number): number =>
  Math.min(1.25, Math.max(0.2, 1.3 * lnSd, 2 * lnSd - 0.21));

/**
 * The side on which everything comes out reaches further: the setting that will be promised lies there, well below the
 * changeover, and must not be a guess beyond the last cell.
 */
const surerSide = 4 / 3;

/**
 * How far in ln speed the slowest rung lies below the believed changeover at least. What will be promised lies well below
 * it, the deeper the fewer cells there are: with a dozen, 0.35 to 0.65. A card that ends above it ends in a guess.
 */
const deepEnd = 0.72;
/** Fewer rungs than these are needed where the changeover is. */
const fewestWithDeepEnd = 4;

/** The slowest rung alone goes down there: the others stay about the changeover, where they teach. */
const withDeepEnd = (ladder: readonly number[], centre: number): readonly number[] => {
  const [slowest = centre, ...others] = ladder;
  return ladder.length < fewestWithDeepEnd
    ? ladder
    : [Math.min(slowest, centre * Math.exp(-deepEnd)), ...others];
};

/** The usual gain of a second pass in speed, 2^0.8 (the middle of the cut model's prior on passes). */
export const passExponent = 0.8;

/** How many settings a card should have: what the user wishes, else 6, or 9 in two ways; never more than the entries left. */
export const settingsWanted = (request: CardRequest): number =>
  Math.min(
    request.settingsAtMost ?? (request.vary === 'speed-and-power' ? 9 : 6),
    rungsLeft(request) ?? Infinity,
  );

/**
 * The settings of a card that was asked for by its question, before the order of cutting is drawn. Speeds and powers are
 * on their steps, within the machine's range, and each setting is there once; there may be fewer than were asked for.
 */
export const settingsFor = (request: CardRequest): readonly Setting[] => {
  const { vary, powerPct } = request;
  const twoWay = vary === 'speed-and-power';
  const count = settingsWanted(request);
  if (vary === 'power') return powerLadder(request, count);
  if (vary === 'corners') return cornersLadder(request, count);
  if (twoWay) {
    const powers = powersAround(request, count >= 6 ? 3 : Math.min(count, 2));
    const speedsEach = Math.floor(count / powers.length);
    return powers.flatMap((power) => speedLadder(request, power, 1, speedsEach));
  }
  if (vary === 'passes') {
    const once = Math.ceil(count / 2);
    return [
      ...speedLadder(request, powerPct, 1, once),
      ...(count > once ? speedLadder(request, powerPct, 2, count - once) : []),
    ];
  }
  return speedLadder(request, powerPct, 1, count);
};

const setting = (
  request: CardRequest,
  powerPct: number,
  speedMmPerS: number,
  passes: number,
): Setting => ({
  powerPct,
  speedMmPerS,
  passes,
  ...(request.air === undefined ? {} : { air: request.air }),
});

/**
 * Speeds around the believed changeover at one power, ascending, evenly spaced over as much of the reach as ceiling and machine
 * leave.
 */
const speedLadder = (
  request: CardRequest,
  powerPct: number,
  passes: number,
  count: number,
): readonly Setting[] => {
  const { v50MmPerS, lnSd } = request.believed(powerPct);
  const [leastMmPerS, mostMmPerS] = request.machine.speedRangeMmPerS;
  const centre = v50MmPerS * passes ** passExponent;
  const least = stepNotSlower(
    Math.max(leastMmPerS, slowestAllowed(powerPct, passes, request.believed)),
  );
  const most = stepNotFaster(mostMmPerS);
  const reach = reachOf(lnSd);
  const within = (speed: number): number => Math.min(most, Math.max(least, speed));
  const low = within(centre * Math.exp(-surerSide * reach));
  const high = within(centre * Math.exp(reach));
  const speeds: number[] = [];
  const ladder = count === 1 ? [within(centre)] : spaced(count, low, high);
  for (const spot of withDeepEnd(ladder, centre)) {
    const wanted = within(nearestStep(spot));
    const last = speeds.at(-1);
    const speed = last !== undefined && wanted <= last ? nextStep(last) : wanted;
    if (speed <= most) speeds.push(speed);
  }
  return speeds.map((speed) => setting(request, powerPct, speed, passes));
};

const powersAround = (request: CardRequest, count: number): readonly number[] => {
  const most = mostPowerPct(request);
  const { powerPct } = request;
  const powers = spaced(count, powerPct * Math.exp(-0.25), powerPct * Math.exp(0.25)).map((power) =>
    Math.max(1, Math.min(most, Math.round(power))),
  );
  return [...new Set(powers)];
};

/** Powers at one speed, ascending: line energy goes as P/v, so powers reach as far as speeds would. */
const powerLadder = (request: CardRequest, count: number): readonly Setting[] => {
  const { v50MmPerS, lnSd } = request.believed(request.powerPct);
  const [leastMmPerS, mostMmPerS] = request.machine.speedRangeMmPerS;
  const speed = nearestStep(
    Math.min(mostMmPerS, Math.max(leastMmPerS, request.speedMmPerS ?? v50MmPerS)),
  );
  const isAllowed = (powerPct: number): boolean =>
    speed >= slowestAllowed(powerPct, 1, request.believed);
  const most = highestWhere(isAllowed, mostPowerPct(request));
  const least = Math.min(request.powerPct, Math.ceil(leastSteadyPct(request.machine)));
  if (most < least) return [];
  const reach = reachOf(lnSd);
  const within = (power: number): number => Math.min(most, Math.max(least, power));
  const low = within(request.powerPct * Math.exp(-reach));
  const high = within(request.powerPct * Math.exp(surerSide * reach));
  const powers = new Set<number>();
  for (const spot of count === 1 ? [within(request.powerPct)] : spaced(count, low, high)) {
    const power = Math.max(1, Math.round(spot), ...[...powers].map((taken) => taken + 1));
    if (power <= most && isAllowed(power)) powers.add(power);
  }
  return [...powers].map((power) => setting(request, power, speed, 1));
};

/** The highest whole power, from 1 to `most`, that is allowed; 1 where none is. */
const highestWhere = (isAllowed: (powerPct: number) => boolean, most: number): number => {
  let powerPct = most;
  while (powerPct > 1 && !isAllowed(powerPct)) powerPct -= 1;
  return Math.max(1, powerPct);
};
