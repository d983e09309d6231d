import { done, refused, type Outcome } from '../problem.ts';
import type { Place } from '../card/card.ts';
import { boxAround } from '../path/box.ts';
import type { Point } from '../path/point.ts';
import { closed, type Polyline } from '../path/polyline.ts';
import { rectangleOf } from './cardPieces.ts';
import type { CombDirection } from './kerfComb.ts';

export interface SlotWish {
  /** The kerf where it is known, mm: fewer slots are needed then. */
  readonly kerfMm?: number;
  /** Along which axis slots are narrow; absent: across. */
  readonly direction?: CombDirection;
  /** Slots of the card; absent: {@link usualSlots}. */
  readonly slots?: number;
  /** From one slot's width to the next, mm; absent: {@link usualStepMm}. */
  readonly stepMm?: number;
}

export interface PlacedSlot {
  /** As drawn, mm: hundredths, as they are scored beside it. */
  readonly drawnMm: number;
  readonly box: Place;
  /** The middle of its label. */
  readonly label: Point;
}

/** A plate with slots in a row, and the tongues that are tried in them. */
export interface SlotSheet {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly direction: CombDirection;
  readonly plate: Place;
  readonly slots: readonly PlacedSlot[];
  /** Each the outline of a T: the tongue is its foot, the rest is to hold it by. */
  readonly tongues: readonly Polyline[];
}

/** With the kerf known, and where it is only guessed. */
export const usualSlots = { known: 9, guessed: 13 } as const;
export const usualStepMm = 0.05;
/** What a usual lens takes out of sheets of 3 to 6 mm. Common practice, no source. */
const guessedKerfMm = 0.2;

/** A narrower slot is one line for a beam, mm. */
const narrowestMm = 0.1;
const leastSlots = 3;
const slotLengthMm = 14;
/** So much narrower than slots are long that its thickness alone decides. */
const tabMm = 10;
const handleMm = { widthMm: 18, heightMm: 8 } as const;
const tongueCount = 2;
const labelMm = { widthMm: 8, heightMm: 2.6 } as const;

/**
 * Slots of widths around the one that a tongue of the sheet should just fill, a step apart, and tongues of the same sheet. Drawn
 * for `across`, turned for `up`. Refuses: `slots-too-narrow`.
 */
export const slotSheet = (wish: SlotWish, thicknessMm: number): Outcome<SlotSheet> => {
  const { kerfMm, direction = 'across', stepMm = usualStepMm } = wish;
  const { slots = kerfMm === undefined ? usualSlots.guessed : usualSlots.known } = wish;
  const middleMm = thicknessMm - (kerfMm ?? guessedKerfMm);
  const widths = Array.from({ length: slots }, (_, i) =>
    Number((middleMm + (i - (slots - 1) / 2) * stepMm).toFixed(2)),
  ).filter((mm) => mm >= narrowestMm);
  if (widths.length < leastSlots) return refused('slots-too-narrow', { thicknessMm });
  const apartMm = Math.ceil(Math.max(8, 2 * thicknessMm, labelMm.widthMm));
  const edgeMm = Math.ceil(Math.max(6, 1.5 * thicknessMm));
  const labelRoomMm = direction === 'across' ? labelMm.heightMm : labelMm.widthMm;
  const belowMm = edgeMm + labelRoomMm + 2;
  let along = 2 * edgeMm;
  const placed = widths.map((drawnMm): PlacedSlot => {
    const xMm = along;
    along += drawnMm + apartMm;
    return {
      drawnMm,
      box: { xMm, yMm: belowMm, widthMm: drawnMm, heightMm: slotLengthMm },
      label: [xMm + drawnMm / 2, belowMm - 2 - labelRoomMm / 2],
    };
  });
  const plate = {
    xMm: edgeMm,
    yMm: edgeMm / 2,
    widthMm: along - apartMm,
    heightMm: belowMm + slotLengthMm + edgeMm / 2,
  };
  const tongues = Array.from({ length: tongueCount }, (_, i) =>
    tongueAt(
      [plate.xMm + plate.widthMm + edgeMm + i * (handleMm.widthMm + edgeMm), plate.yMm],
      Math.max(14, 2 * thicknessMm + 8),
    ),
  );
  const box = boxAround([rectangleOf(plate), ...tongues]);
  const laid = {
    direction,
    plate,
    slots: placed,
    tongues,
    widthMm: Math.ceil((box?.rightMm ?? 0) + edgeMm),
    heightMm: Math.ceil((box?.topMm ?? 0) + edgeMm / 2),
  };
  return done(direction === 'across' ? laid : turned(laid));
};

/** A T upside down from its low left corner: the tongue below, its handle above. */
const tongueAt = ([x, y]: Point, tabLengthMm: number): Polyline => {
  const { widthMm, heightMm } = handleMm;
  const [left, right] = [x + (widthMm - tabMm) / 2, x + (widthMm + tabMm) / 2];
  const [neck, top] = [y + tabLengthMm, y + tabLengthMm + heightMm];
  return closed([
    [left, y],
    [right, y],
    [right, neck],
    [x + widthMm, neck],
    [x + widthMm, top],
    [x, top],
    [x, neck],
    [left, neck],
  ]);
};

/** X for Y: what lay side by side lies one above the other. */
const turned = (sheet: SlotSheet): SlotSheet => ({
  ...sheet,
  widthMm: sheet.heightMm,
  heightMm: sheet.widthMm,
  plate: turnedPlace(sheet.plate),
  slots: sheet.slots.map(({ drawnMm, box, label: [x, y] }) => ({
    drawnMm,
    box: turnedPlace(box),
    label: [y, x],
  })),
  tongues: sheet.tongues.map((tongue) => tongue.map(([x, y]): Point => [y, x])),
});

const turnedPlace = ({ xMm, yMm, widthMm, heightMm }: Place): Place => ({
  xMm: yMm,
  yMm: xMm,
  widthMm: heightMm,
  heightMm: widthMm,
});
