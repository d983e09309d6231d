import type { FastifyRequest } from 'fastify';
import type { PairedPhone } from '../app/ports/phones.ts';

/** Who it is that asks. */
export interface Gate {
  /** Undefined: no phone. */
  readonly phoneOf: (request: FastifyRequest) => Promise<PairedPhone | undefined>;
  /** Whether who asked once is still let in. */
  readonly isStillIn: (request: FastifyRequest) => Promise<boolean>;
}
