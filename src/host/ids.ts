import { randomInt, randomUUID } from 'node:crypto';
import type { Ids } from '../app/ports/ports.ts';
import { cardCode } from '../core/card/cardCode.ts';

/** Names from this computer's own source of chance. */
export const randomIds: Ids = {
  newId: () => randomUUID(),
  newCode: () => cardCode({ integer: (n) => randomInt(n) }),
};
