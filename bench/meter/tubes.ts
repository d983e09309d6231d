/** What an invented tube really draws at a setting. */
export interface Tube {
  readonly name: string;
  readonly ratedMa: number;
  readonly drawsMa: (powerPct: number) => number;
}

/** Below its firing threshold a tube draws nothing; there it jumps to what the discharge needs to burn. */
const fires =
  (fromPct: number, drawn: (powerPct: number) => number) =>
  (powerPct: number): number =>
    powerPct < fromPct ? 0 : drawn(powerPct);

/** Four shapes of curve. Invented; thresholds and sizes as are usual for small glass tubes (common practice, no source). */
export const tubes: readonly Tube[] = [
  {
    name: 'straight: 3 mA at 9.3 %, 0.288 mA/%',
    ratedMa: 19,
    drawsMa: fires(9.3, (pct) => 3 + 0.288 * (pct - 9.3)),
  },
  {
    name: 'bends over: 3.4 mA at 11.6 %, 0.42 mA/%, falling',
    ratedMa: 24,
    drawsMa: fires(11.6, (pct) => 3.4 + (0.42 * (pct - 11.6)) / (1 + (pct - 11.6) / 220)),
  },
  {
    name: 'soft start: 2 mA at 7.4 %, rising to 0.33 mA/%',
    ratedMa: 22,
    drawsMa: fires(7.4, (pct) => 2 + 0.33 * 4 * Math.log1p(Math.exp((pct - 12) / 4))),
  },
  {
    name: 'S-shaped: 2.6 mA at 13.2 %, flat towards 28.6 mA',
    ratedMa: 28,
    drawsMa: fires(13.2, (pct) => 30 / (1 + Math.exp(-(pct - 45) / 17)) - 1.4),
  },
];

/** The setting at which a tube reaches a current, by halving. */
export const trueSettingPct = ({ drawsMa }: Tube, currentMa: number): number => {
  let [below, above] = [0, 100];
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (below + above) / 2;
    if (drawsMa(middle) <= currentMa) below = middle;
    else above = middle;
  }
  return below;
};
