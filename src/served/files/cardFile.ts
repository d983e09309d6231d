import type { CardFileKind, RampFileKind } from '../../formats/machineFiles.ts';
import type { Model } from '../../app/sums/model.ts';
import type { Card } from '../../core/card/card.ts';
import type { RampCard } from '../../core/card/rampCard.ts';
import type { KerfCard } from '../../core/kerf/kerfCard.ts';
import type { GcodeDialect } from '../../core/dialect/gcodeDialect.ts';
import type { Machine } from '../../core/machine/machine.ts';
import type { MarkLimits } from '../../core/marking/markLimits.ts';
import type { MarkStrip } from '../../core/marking/markStrip.ts';
import type { Outcome } from '../../core/problem.ts';
import type { UnitPreference } from '../../core/units/unitPreference.ts';
import type { Study } from '../../core/study/study.ts';

/** A card made into a file for the machine or the printer. */
export interface CardFile {
  readonly contentType: string;
  readonly body: string | Uint8Array;
}

/** Which file, and in what units its page speaks; absent: mm and mm/s. */
export interface CardFileWanted {
  readonly kind: CardFileKind;
  readonly units?: UnitPreference;
}

/** Draws card files; the program wires it, since drawing and printing are other layers' work. */
export type DrawCardFile = (
  study: Study,
  card: Card,
  wanted: CardFileWanted,
  model: Model,
) => Promise<Outcome<CardFile>>;

/** Draws the files of a focus ramp, wired likewise. */
export type DrawRampFile = (ramp: RampToFile, kind: RampFileKind) => Promise<Outcome<CardFile>>;

/** Draws the files of a comb or slot card, wired likewise. */
export type DrawKerfCardFile = (
  card: KerfCardToFile,
  kind: RampFileKind,
) => Promise<Outcome<CardFile>>;

/** Draws the files of a marking strip, wired likewise. */
export type DrawMarkStripFile = (
  strip: MarkStripToFile,
  kind: RampFileKind,
) => Promise<Outcome<CardFile>>;

/** A marking strip and what it is held to. */
export interface MarkStripToFile {
  readonly strip: MarkStrip;
  readonly limits: MarkLimits;
  /** Absent: the machine's own. */
  readonly dialect?: GcodeDialect;
  readonly units?: UnitPreference;
}

/** A comb or slot card and the machine that it is held to. */
export interface KerfCardToFile {
  readonly card: KerfCard;
  readonly machine: Machine;
  /** Whether its material may glow on. */
  readonly glows: boolean;
  /** Absent: the machine's own. */
  readonly dialect?: GcodeDialect;
  readonly units?: UnitPreference;
}

/** A focus ramp and the machine that it is held to; the machine's own G-code where no dialect is named. */
export interface RampToFile {
  readonly card: RampCard;
  readonly machine: Machine;
  readonly dialect?: GcodeDialect;
  readonly units?: UnitPreference;
}
