import type { FastifyRequest } from 'fastify';
import type { Author } from '../core/author.ts';
import type { PairedPhone } from '../app/ports/phones.ts';

/** Who it is that asks. */
export interface Gate {
  /** Undefined: no phone. */
  readonly phoneOf: (request: FastifyRequest) => Promise<PairedPhone | undefined>;
  /** Whether who asked once is still let in. */
  readonly isStillIn: (request: FastifyRequest) => Promise<boolean>;
  /** A phone by the name that it was let in under, the desk by the one that was given there. */
  readonly authorOf: (request: FastifyRequest) => Author;
}
