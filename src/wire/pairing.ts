import { z } from 'zod';
import { isoTime } from '../formats/saved/bounds.ts';

/** How the one who asks stands to this server. The code is told to the desk alone. */
export const pairingReply = z.strictObject({
  /** Whether phones are let in at all (`serve --lan`). */
  lan: z.boolean(),
  /** Whether the one who asks sits at this computer. */
  desk: z.boolean(),
  /** Whether the one who asks may go on: at the desk always, a phone once it is paired. */
  letIn: z.boolean(),
  /** The phone that asks: by what name it was let in. */
  name: z.string().exactOptional(),
  /** For the desk: where a phone finds the server, and what to type there. */
  invitation: z
    .strictObject({
      addresses: z.array(z.string()),
      /** Absent: nobody asked for one, or it has run out. */
      code: z.string().exactOptional(),
      validUntil: isoTime.exactOptional(),
      /** Too many wrong codes were typed: no phone gets in before then, unless the desk asks for a code. */
      pausedUntil: isoTime.exactOptional(),
    })
    .exactOptional(),
  /** For the desk: the phones that are let in. */
  phones: z
    .array(
      z.strictObject({ id: z.string(), name: z.string(), pairedAt: isoTime, lastSeenAt: isoTime }),
    )
    .exactOptional(),
});

export const pairBody = z.strictObject({
  code: z.string().trim().min(1).max(20),
  /** How the desk is to call the phone. Absent: by a number. */
  name: z.string().trim().min(1).max(40).exactOptional(),
});

export const byPhone = z.strictObject({ id: z.string().min(1).max(40) });

export const pairReply = z.strictObject({ letIn: z.literal(true) });
