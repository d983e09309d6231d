/**
 * DXF's index of colours, 10 to 249: the tens are 24 hues in steps of 15°, the even units five brightnesses of each.
 * For every colour the nearest index that no other colour has taken; equal colours share one. Ink, which is next to black, gets 7:
 * that is shown black on a light ground and white on a dark one, where a dark blue could not be seen.
 */
export const indexColours = (colours: readonly string[]): readonly number[] => {
  const taken = new Map<string, number>();
  for (const colour of colours) {
    if (taken.has(colour)) continue;
    if (isInk(colour) && ![...taken.values()].includes(inkIndex)) {
      taken.set(colour, inkIndex);
      continue;
    }
    const used = new Set(taken.values());
    const free = candidates.filter((candidate) => !used.has(candidate.index));
    const nearest = free.reduce<Candidate | undefined>(
      (best, next) =>
        best === undefined || distance(next, colour) < distance(best, colour) ? next : best,
      undefined,
    );
    taken.set(colour, nearest?.index ?? inkIndex);
  }
  return colours.map((colour) => taken.get(colour) ?? inkIndex);
};

/** Drawn in whatever stands out: the full colour beside it would undo that. */
export const inkIndex = 7;
const darkestOfColours = 0x60;

const channelsOf = (colour: string): readonly number[] =>
  [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));

const isInk = (colour: string): boolean =>
  channelsOf(colour).every((channel) => channel < darkestOfColours);

interface Candidate {
  readonly index: number;
  readonly rgb: readonly [number, number, number];
}

/** The brightness of the even units, from the common table of the index (from memory). */
const brightnesses = [1, 0.74, 0.51, 0.41, 0.31] as const;

const candidates: readonly Candidate[] = Array.from({ length: 24 }, (_, hue) =>
  brightnesses.map((brightness, shade): Candidate => {
    const channel = (offset: number): number => {
      const sector = ((hue * 15) / 60 + offset) % 6;
      return 255 * brightness * Math.max(0, Math.min(1, sector < 3 ? 2 - sector : sector - 4));
    };
    return { index: 10 * (hue + 1) + 2 * shade, rgb: [channel(0), channel(4), channel(2)] };
  }),
).flat();

const distance = ({ rgb }: Candidate, colour: string): number =>
  Math.hypot(...channelsOf(colour).map((channel, i) => (rgb[i] ?? NaN) - channel));
