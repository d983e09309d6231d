import { done, problemOf, refused, type Outcome, type Problem } from '../problem.ts';

/** How a tongue of the sheet goes into a slot: not at all, with a mallet, by hand and stays, by hand and slides, with play. */
export const slotFits = ['no', 'press', 'snug', 'slip', 'loose'] as const;
export type SlotFit = (typeof slotFits)[number];

/** The joints that are made on purpose. */
export const jointKinds = ['press', 'snug', 'slip'] as const satisfies readonly SlotFit[];
export type JointKind = (typeof jointKinds)[number];

/** One slot of a slot card, and how a tongue of the same sheet went in. */
export interface SlotRead {
  /** Width of the slot as drawn, mm. */
  readonly drawnMm: number;
  readonly fit: SlotFit;
}

/** What to draw for one kind of joint. */
export interface Joint {
  readonly kind: JointKind;
  /** Width of the slot to draw less the thickness of the tongue, mm: negative where the beam opens the slot by more. */
  readonly allowanceMm: number;
  /** The slot to draw in a sheet as thick as the tongue that was tried, mm. */
  readonly drawMm: number;
  /** How far to either side the width may lie, mm: half of what the slots leave open. */
  readonly toMm: number;
  /** True where a slot of the card went so; else it lies between two that went tighter and looser. */
  readonly isSeen: boolean;
  /** What is left between tongue and slot, mm, where the kerf is known; negative where it is pressed. */
  readonly clearanceMm?: number;
}

export interface Joints {
  readonly joints: readonly Joint[];
  readonly remarks: readonly Problem[];
}

/**
 * Widths of slots for press, snug and slip joints, from a card of slots that a tongue of the same sheet was tried in. Two
 * slots hold between them what went neither tighter nor looser: the middle is drawn. Refuses `joint-slots-unread` (fewer
 * than two) and `joint-slots-mixed` (a wider slot that went tighter).
 */
export const jointsFrom = (
  slots: readonly SlotRead[],
  { tongueMm, kerfMm }: { readonly tongueMm: number; readonly kerfMm?: number },
): Outcome<Joints> => {
  if (slots.length < 2) return refused('joint-slots-unread');
  const sorted = [...slots].sort((a, b) => a.drawnMm - b.drawnMm || rank(a) - rank(b));
  const mixed = sorted.findIndex((slot, i) => i > 0 && rank(slot) < rank(sorted[i - 1] ?? slot));
  const tighter = sorted[mixed];
  const looser = sorted[mixed - 1];
  if (tighter !== undefined && looser !== undefined) {
    return refused('joint-slots-mixed', { wideMm: tighter.drawnMm, narrowMm: looser.drawnMm });
  }
  const told = jointKinds.map((kind) => ({ kind, place: placeOf(sorted, kind) }));
  return done({
    joints: told.flatMap(({ kind, place }) =>
      place === null
        ? []
        : [
            {
              kind,
              allowanceMm: place.drawMm - tongueMm,
              ...place,
              ...(kerfMm === undefined ? {} : { clearanceMm: place.drawMm + kerfMm - tongueMm }),
            },
          ],
    ),
    remarks: told.flatMap(({ kind, place }) => remarkOf(kind, place)),
  });
};

const rank = ({ fit }: SlotRead): number => slotFits.indexOf(fit);

type Place = Pick<Joint, 'drawMm' | 'toMm' | 'isSeen'>;

/** Between the widest that went tighter and the narrowest that went looser; null where one side is missing. */
const placeOf = (sorted: readonly SlotRead[], kind: JointKind): Place | null => {
  const wanted = slotFits.indexOf(kind);
  const seen = sorted.filter(({ fit }) => fit === kind).map(({ drawnMm }) => drawnMm);
  const tighter = sorted.filter((slot) => rank(slot) < wanted).at(-1)?.drawnMm;
  const looser = sorted.find((slot) => rank(slot) > wanted)?.drawnMm;
  const [narrowest, widest] = [seen[0], seen.at(-1)];
  if (narrowest !== undefined && widest !== undefined) {
    // As far as half-way to the neighbours it is as likely to go so as not.
    const low = tighter === undefined ? narrowest : (tighter + narrowest) / 2;
    const high = looser === undefined ? widest : (widest + looser) / 2;
    return { drawMm: (low + high) / 2, toMm: (high - low) / 2, isSeen: true };
  }
  if (tighter === undefined || looser === undefined) return null;
  return { drawMm: (tighter + looser) / 2, toMm: (looser - tighter) / 2, isSeen: false };
};

const remarkOf = (kind: JointKind, place: Place | null): readonly Problem[] => {
  if (place === null) return [problemOf('joint-not-seen', { kind })];
  if (place.isSeen) return [];
  return [problemOf('joint-between-slots', { kind, drawMm: Number(place.drawMm.toFixed(3)) })];
};
