import type { Card } from '../core/card/card.ts';
import type { Outcome } from '../core/problem.ts';
import type { Study } from '../core/study/study.ts';

export type CardFileKind = 'svg' | 'dxf' | 'gcode' | 'pdf' | 'json';

/** A card made into a file for the machine or the printer. */
export interface CardFile {
  readonly contentType: string;
  readonly body: string | Uint8Array;
}

/** Draws card files; the program wires it, since drawing and printing are other layers' work. */
export type DrawCardFile = (
  study: Study,
  card: Card,
  kind: CardFileKind,
) => Promise<Outcome<CardFile>>;
