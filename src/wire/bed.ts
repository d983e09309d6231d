import { z } from 'zod';
import { bedPlaces } from '../core/bed/place.ts';
import { bedTestShape } from '../formats/saved/bedTest.ts';

/** One place against the other three. */
const place = z.strictObject({
  place: z.enum(bedPlaces),
  /** How much slower the changeover lies there, in per cent, with a band of 90 %. */
  slowerPct: z.number(),
  lowPct: z.number(),
  highPct: z.number(),
  /** Probability that it is more than 5 % slower. */
  chanceWeak: z.number(),
  /** Fisher's exact probability of so few out, and the same allowing for four places. */
  exactP: z.number(),
  exactPOfFour: z.number(),
});

/** A reading of the four corners, and what it says. */
export const bedTestReply = z.strictObject({
  test: bedTestShape,
  verdict: z.enum(['place', 'side', 'even', 'untold']),
  sentence: z.string(),
  places: z.array(place),
  /** Cheapest first. */
  suspects: z.array(z.strictObject({ name: z.string(), how: z.string() })),
});
