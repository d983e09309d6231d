import type { Card } from '../core/card/card.ts';
import type { CardDrawing } from '../core/card/cardDrawing.ts';
import type { BelievedChangeover } from '../core/card/cardRequest.ts';
import type { GcodeDialect } from '../core/dialect/gcodeDialect.ts';
import type { Machine } from '../core/machine/machine.ts';
import type { JobToTime } from '../core/motion/timedJobs.ts';
import type { Outcome } from '../core/problem.ts';

/** A drawing that is no card. */
export interface OtherDrawing {
  readonly title: string;
  /** In the signs that G-code allows. */
  readonly plainTitle: string;
  readonly drawing: CardDrawing;
  /** It is run for its time with the beam disarmed: its program never lights the beam. */
  readonly timed?: JobToTime;
}

/** What a file is made of, and what everything in it that fires is held to. */
export interface FileToMake {
  /** A card, or another drawing for the machine. */
  readonly of: Card | OtherDrawing;
  readonly machine: Machine;
  /** Where the sheet's changeover is believed to be; absent: as the card has it. */
  readonly believed?: BelievedChangeover;
  /** How the G-code is wanted; absent: as the machine has it. */
  readonly dialect?: GcodeDialect;
  /** Cautions and what else stands in the file for people. */
  readonly notes?: readonly string[];
}

/** One kind of file that a machine, or the program before it, takes: all that lists such files reads it from here. */
export interface MachineFileFormat {
  /** What it is called, in any language. */
  readonly name: string;
  readonly contentType: string;
  /** How names of such files end where other programs write them; ours end with its key in the list. */
  readonly endings: readonly string[];
  /** Loads what it needs when it is first asked. */
  readonly write: (make: FileToMake) => Promise<Outcome<string>>;
}
