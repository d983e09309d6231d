import type { Air } from '../machine/air.ts';
import type { Machine } from '../machine/machine.ts';
import type { Setting } from '../machine/setting.ts';
import type { TestShape } from './testShapes.ts';

/** What the user does not know: "my speed", "my power", both, "whether two passes pay", "my corners". */
export type Vary = 'speed' | 'power' | 'speed-and-power' | 'passes' | 'corners';

/** The speed at which half the shapes are believed to come out, at one power setting, and how well that is known. */
export interface BelievedSpeed {
  readonly v50MmPerS: number;
  /** Standard deviation of ln v50. */
  readonly lnSd: number;
  /** How that speed rises with the delivered power; absent: in proportion. */
  readonly powerExponent?: number;
  /** Slower changeovers are not thinkable for this material and machine, whatever was said of them. */
  readonly thinkableFromMmPerS?: number;
}

export type BelievedChangeover = (powerPct: number) => BelievedSpeed;

/** All that a card is designed from. Equal requests give equal cards. */
export interface CardRequest {
  readonly code: string;
  /** What the card is to find out. Without meaning where `rungs` says the settings outright. */
  readonly vary: Vary;
  readonly powerPct: number;
  /**
   * With `vary: 'power'` or `'corners'`: the speed to hold. Absent: the believed changeover at `powerPct`; for corners well
   * below it.
   */
  readonly speedMmPerS?: number;
  /** The settings outright. */
  readonly rungs?: readonly Setting[];
  /** The most settings that a person wants to type for this card's cells. Absent: 6, or 9 with two things varied. */
  readonly settingsAtMost?: number;
  /** From the colour trial: how many separate entries the control program keeps apart, marks and outline included. */
  readonly entriesAtMost?: number;
  readonly cellsEach: number;
  readonly shape: TestShape;
  readonly sizeMm: number;
  readonly sheetMm: readonly [widthMm: number, heightMm: number];
  readonly thicknessMm: number;
  readonly machine: Machine;
  readonly air?: Air;
  readonly believed: BelievedChangeover;
  readonly seed: number;
  /** Named by a person: cells may drive the tube above its rated current. */
  readonly overdrive?: boolean;
  /** What the user scores a line with. Absent: a gentle guess, and it is said. */
  readonly scoring?: Setting;
  /** A slow setting that the user trusts. Absent: no outline and no window. */
  readonly trusted?: Setting;
  readonly outline?: 'last' | 'none';
  /** `free` shuffles every cell; only G-code can carry it to the machine. */
  readonly order?: 'by-rung' | 'free';
  readonly batch?: string;
  readonly sheet?: string;
}
