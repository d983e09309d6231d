import type { Model } from '../app/sums/model.ts';
import type { AskingPorts, Ports } from '../app/ports/ports.ts';

/** Gives who makes sums for someone, until that one has gone. */
export type ModelFor = (gone: AbortSignal) => Model;

/** What routes work with. Sums are asked for somebody: see `until`. */
export interface ServedPorts extends Ports {
  /** With sums that are given up when whoever asked has gone. */
  readonly until: (gone: AbortSignal) => AskingPorts;
}
