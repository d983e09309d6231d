import type { Card } from '../../core/card/card.ts';
import designed from './firstCard.json' with { type: 'json' };

/**
 * The usual card for the commonest sheet, under this code. It was designed beforehand, so that the first view need not
 * carry all that designs cards; a test holds it to what the design says.
 */
export const firstCard = (code: string): Card => ({
  // What the design wrote.
  ...(designed as unknown as Card),
  code,
});
