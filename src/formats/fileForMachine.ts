import type { Card } from '../core/card/card.ts';
import { cardDrawing, type CardDrawing } from '../core/card/cardDrawing.ts';
import type { BelievedChangeover } from '../core/card/cardRequest.ts';
import { checkToolpath } from '../core/filecheck/checkToolpath.ts';
import { plainDialect, type GcodeDialect } from '../core/machine/gcodeDialect.ts';
import type { Machine } from '../core/machine/machine.ts';
import type { JobToTime } from '../core/motion/timedJobs.ts';
import { done, type Outcome } from '../core/problem.ts';
import { readToolpath } from './readToolpath.ts';

/** Kinds of file that a machine, or the program before it, takes. */
export const machineFileKinds = ['svg', 'dxf', 'gcode'] as const;
export type MachineFileKind = (typeof machineFileKinds)[number];

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

/**
 * The one way from a drawing to a file for the machine: whoever asks, the file is written, read back by the reader of its kind
 * and put through the check of files, and it is given away only without a fault. Refuses with the first fault that the check
 * found, and what the writers refuse. ~0.1 s for a card of 24 cells.
 */
export const fileForMachine = async (
  kind: MachineFileKind,
  make: FileToMake,
): Promise<Outcome<string>> => {
  const written = await writers[kind](make);
  if (!written.ok) return written;
  const path = readToolpath(written.value);
  if (!path.ok) return path;
  const { of, machine, believed } = make;
  const { findings } = checkToolpath(path.value, {
    machine,
    ...('drawing' in of ? {} : { card: of }),
    ...(believed === undefined ? {} : { believed }),
  });
  const fault = findings.find(({ severity }) => severity === 'fault');
  return fault === undefined ? written : { ok: false, problem: fault };
};

const partsOf = ({ of }: FileToMake): { readonly title: string; readonly drawing: CardDrawing } =>
  'drawing' in of ? of : { title: `Card ${of.code}`, drawing: cardDrawing(of) };

/** Each is loaded when it is first asked for. */
const writers: Readonly<Record<MachineFileKind, (make: FileToMake) => Promise<Outcome<string>>>> = {
  svg: async (make) => {
    const { writeSvg } = await import('./svg/writeSvg.ts');
    const { title, drawing } = partsOf(make);
    return done(writeSvg(drawing, title, make.notes));
  },
  dxf: async (make) => {
    const { writeDxf } = await import('./dxf/writeDxf.ts');
    return done(writeDxf(partsOf(make).drawing, make.notes));
  },
  gcode: async (make) => {
    const { writeDrawingGcode, writeGcode } = await import('./gcode/writeGcode.ts');
    const { of, machine, dialect = machine.gcode ?? plainDialect, notes } = make;
    if ('drawing' in of && of.timed !== undefined) {
      const { writeTimedGcode } = await import('./gcode/writeTimedGcode.ts');
      return done(writeTimedGcode(of.timed, dialect, notes ?? []));
    }
    return 'drawing' in of
      ? writeDrawingGcode({ title: of.plainTitle, drawing: of.drawing }, dialect, notes)
      : writeGcode(of, dialect, notes);
  },
};
