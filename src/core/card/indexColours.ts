/**
 * DXF's index of colours, 10 to 249: the tens are 24 hues in steps of 15°, the even units five brightnesses of each.
 * For every colour the nearest index that no other colour has taken; equal colours share one.
 */
export const indexColours = (colours: readonly string[]): readonly number[] => {
  const taken = new Map<string, number>();
  for (const colour of colours) {
    if (taken.has(colour)) continue;
    const used = new Set(taken.values());
    const free = candidates.filter((candidate) => !used.has(candidate.index));
    const nearest = free.reduce<Candidate | undefined>(
      (best, next) =>
        best === undefined || distance(next, colour) < distance(best, colour) ? next : best,
      undefined,
    );
    taken.set(colour, nearest?.index ?? 7);
  }
  return colours.map((colour) => taken.get(colour) ?? 7);
};

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

const distance = (candidate: Candidate, colour: string): number =>
  Math.hypot(
    ...candidate.rgb.map(
      (value, i) => value - Number.parseInt(colour.slice(1 + 2 * i, 3 + 2 * i), 16),
    ),
  );
