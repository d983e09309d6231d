import type { FastifyRequest } from 'fastify';
import type { Author } from '../core/author.ts';
import type { Role } from '../core/role.ts';
import type { PairedPhone } from '../app/ports/phones.ts';

/** Who it is that asks. */
export interface Gate {
  /** Undefined: no phone. */
  readonly phoneOf: (request: FastifyRequest) => Promise<PairedPhone | undefined>;
  /** What who asked once may do now; undefined: let in no longer. */
  readonly roleNow: (request: FastifyRequest) => Promise<Role | undefined>;
  /** A phone by the name that it was let in under, the desk by the one that was given there. */
  readonly authorOf: (request: FastifyRequest) => Author;
}
