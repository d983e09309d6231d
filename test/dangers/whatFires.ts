import { z } from 'zod';

/** A setting at which something in a file fires, and what it is. */
export interface Firing {
  readonly part: 'cell' | 'marks' | 'trusted' | 'program';
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly passes: number;
}

/** What a card's files amount to, for who holds them against limits. */
export interface FilesMade {
  readonly fires: readonly Firing[];
  /** What can be read of them, by the kind of file, as one text each. */
  readonly words: readonly (readonly [kind: string, words: string])[];
  /** The changeover for which the card was designed. */
  readonly believed?: { readonly powerPct: number; readonly v50MmPerS: number };
}

const setting = z.object({
  powerPct: z.number(),
  minPowerPct: z.number().optional(),
  speedMmPerS: z.number(),
  passes: z.number(),
});
const master = z.object({
  rungs: z.array(setting),
  scoring: setting.optional(),
  trusted: setting.optional(),
  believed: z.object({ powerPct: z.number(), v50MmPerS: z.number() }).optional(),
});

/**
 * What a card's master and its program make the machine do, read without any of the project's readers: the settings that are
 * written down, and every F with its S.
 */
export const whatFires = (
  files: ReadonlyMap<string, string>,
  believedOf?: FilesMade['believed'],
): FilesMade => {
  const json = files.get('json');
  const card = json === undefined ? undefined : master.parse(JSON.parse(json));
  const believed = card?.believed ?? believedOf;
  const fire = (part: Firing['part'], s: z.infer<typeof setting> | undefined): readonly Firing[] =>
    s === undefined ? [] : [{ part, ...s, powerPct: Math.max(s.powerPct, s.minPowerPct ?? 0) }];
  return {
    fires: [
      ...(card?.rungs.flatMap((rung) => fire('cell', rung)) ?? []),
      ...fire('marks', card?.scoring),
      ...fire('trusted', card?.trusted),
      ...inProgram(files.get('gcode') ?? ''),
    ],
    words: [...files].flatMap(([kind, text]) => (kind === 'pdf' ? [] : [[kind, text] as const])),
    ...(believed === undefined ? {} : { believed }),
  };
};

/** Our programs give every lit line its F and S in one block, and say what S means 100 %. */
const inProgram = (gcode: string): readonly Firing[] => {
  const full = Number(/\(S([\d.]+) is 100 pct\)/.exec(gcode)?.[1] ?? '1000');
  return [...gcode.matchAll(/^G1 .*F([\d.]+) S([\d.]+)/gm)].map(([, f, s]) => ({
    part: 'program',
    powerPct: (100 * Number(s)) / full,
    speedMmPerS: Number(f) / 60,
    passes: 1,
  }));
};
