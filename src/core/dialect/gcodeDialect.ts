/** How one machine wants its G-code: what differs between controllers that all read RS-274. */
export interface GcodeDialect {
  /** The user's own lines, before and after everything else. */
  readonly opening: readonly string[];
  readonly closing: readonly string[];
  /** The S word that means a power setting of 100 %. */
  readonly sAtFullPower: number;
  /** `constant` (M3): the same power at every speed. `speed-following` (M4): the controller lowers it as the head slows. */
  readonly power: 'constant' | 'speed-following';
  /** The word that opens the air valve. */
  readonly airOn: 'M7' | 'M8';
}

/** What is assumed of a machine that nobody has described: the plainest there is. */
export const plainDialect: GcodeDialect = {
  opening: [],
  closing: ['G0 X0 Y0', 'M2'],
  sAtFullPower: 1000,
  power: 'constant',
  airOn: 'M8',
};
