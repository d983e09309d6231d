import { z } from 'zod';
import { roles } from '../core/role.ts';
import { isoTime } from '../formats/saved/bounds.ts';

const role = z.enum(roles);
/** How the desk is to call a phone. */
const phoneName = z.string().trim().min(1).max(40);

/** A phone that is let in, as who runs the place sees it. */
export const phoneLetIn = z.strictObject({
  id: z.string(),
  name: z.string(),
  role,
  pairedAt: isoTime,
  lastSeenAt: isoTime,
});

/** How the one who asks stands to this server. The code is told to who runs the place alone. */
export const pairingReply = z.strictObject({
  /** Whether phones are let in at all (`serve --lan`). */
  lan: z.boolean(),
  /** Whether the one who asks sits at this computer. */
  desk: z.boolean(),
  /** Whether the one who asks may go on: at the desk always, a phone once it is paired. */
  letIn: z.boolean(),
  /** The phone that asks: by what name it was let in. */
  name: z.string().exactOptional(),
  /** What the one who asks may do. Absent: not let in. */
  role: role.exactOptional(),
  /** For who runs the place: where a phone finds the server, and what to type there. */
  invitation: z
    .strictObject({
      addresses: z.array(z.string()),
      /** Absent: nobody asked for one, or it has run out. */
      code: z.string().exactOptional(),
      validUntil: isoTime.exactOptional(),
      /** What the phone may do that types the code. */
      role: role.exactOptional(),
      /** Too many wrong codes were typed: no phone gets in before then, unless the desk asks for a code. */
      pausedUntil: isoTime.exactOptional(),
    })
    .exactOptional(),
  /** For who runs the place: the phones that are let in. */
  phones: z.array(phoneLetIn).exactOptional(),
});

export const pairBody = z.strictObject({
  code: z.string().trim().min(1).max(20),
  /** Absent: it is called by a number. */
  name: phoneName.exactOptional(),
});

/** `role`: what the phone may do. Absent: as was said before, else the usual. */
export const openPairingQuery = z.strictObject({ role: role.exactOptional() });

export const changePhoneBody = z.strictObject({
  name: phoneName.exactOptional(),
  role: role.exactOptional(),
});

export const byPhone = z.strictObject({ id: z.string().min(1).max(40) });

export const pairReply = z.strictObject({ letIn: z.literal(true), role });
