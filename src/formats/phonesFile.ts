import { z } from 'zod';
import { isoTime } from './saved/bounds.ts';

/** The phones that are let in, as an earlier server kept them beside its data. */
const phonesFile = z.strictObject({
  version: z.literal(1),
  phones: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      tokenHash: z.string(),
      pairedAt: isoTime,
      lastSeenAt: isoTime,
    }),
  ),
});

type Phones = z.output<typeof phonesFile>['phones'];

/** Reads it; a file that is none lets nobody in: its phones are paired anew. */
export const parsePhonesFile = (text: string): Phones => {
  try {
    const read = phonesFile.safeParse(JSON.parse(text));
    return read.success ? read.data.phones : [];
  } catch {
    return [];
  }
};
