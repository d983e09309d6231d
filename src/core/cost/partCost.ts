/** What a person assumes of money and time; all of it in plain sight, none of it measured. Money in any one currency. */
export interface CostAssumptions {
  /** What an hour of the machine with its keeper is worth. */
  readonly perHour: number;
  readonly tubePrice: number;
  /** Hours that a tube lives at its rated current. Commonly 1,000 to 10,000 by current: common practice, no source. */
  readonly tubeHoursAtRated: number;
  /** Life goes as (rated/current) to this power: 2 means four times as long at half the current. Common practice, no source. */
  readonly lifeExponent: number;
  readonly sheetPerPart: number;
  /** Time that freeing one part with a knife takes. */
  readonly knifeSeconds: number;
}

export const usualAssumptions: CostAssumptions = {
  perHour: 20,
  tubePrice: 300,
  tubeHoursAtRated: 2000,
  lifeExponent: 2,
  sheetPerPart: 0.2,
  knifeSeconds: 45,
};

/** One way of cutting one part. */
export interface WayToCut {
  /** Time of the cut, with all that the machine loses in corners and travel as far as known. */
  readonly seconds: number;
  /** Tube current as a share of rated; the power setting over 100 where no meter reading tells. */
  readonly shareOfRated: number;
  /** Share of parts that need a knife, 0–1. */
  readonly knifeShare: number;
}

export interface PartCost {
  readonly seconds: number;
  readonly knifeSeconds: number;
  readonly time: number;
  readonly knife: number;
  readonly tube: number;
  readonly sheet: number;
  readonly total: number;
}

const secondsAnHour = 3600;

/** Hours that the tube lives at a share of its rated current. */
export const tubeHours = (
  { tubeHoursAtRated, lifeExponent }: CostAssumptions,
  shareOfRated: number,
): number => tubeHoursAtRated * shareOfRated ** -lifeExponent;

/** Cost of one part. Each figure in the money of the assumptions. */
export const partCost = (way: WayToCut, assumed: CostAssumptions): PartCost => {
  const knifeSeconds = way.knifeShare * assumed.knifeSeconds;
  const time = (way.seconds / secondsAnHour) * assumed.perHour;
  const knife = (knifeSeconds / secondsAnHour) * assumed.perHour;
  const tube =
    (way.seconds / secondsAnHour / tubeHours(assumed, way.shareOfRated)) * assumed.tubePrice;
  const sheet = assumed.sheetPerPart;
  return {
    seconds: way.seconds,
    knifeSeconds,
    time,
    knife,
    tube,
    sheet,
    total: time + knife + tube + sheet,
  };
};

/**
 * What an hour must be worth for two ways to cost the same, all else as assumed: below it the one that spares the tube is
 * cheaper, above it the one that spares time. Null where one of them is cheaper at any worth.
 */
export const perHourWhereEqual = (
  a: WayToCut,
  b: WayToCut,
  assumed: CostAssumptions,
): number | null => {
  const [costA, costB] = [a, b].map((way) => partCost(way, assumed));
  if (costA === undefined || costB === undefined) return null;
  const hoursA = (costA.seconds + costA.knifeSeconds) / secondsAnHour;
  const hoursB = (costB.seconds + costB.knifeSeconds) / secondsAnHour;
  if (hoursA === hoursB) return null;
  const perHour = (costB.tube - costA.tube) / (hoursA - hoursB);
  return perHour > 0 ? perHour : null;
};
