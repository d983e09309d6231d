import { labelAt, rectangleOf, type KerfCardLines } from './cardPieces.ts';
import type { SlotSheet } from './slotSheet.ts';

/** Lines of a slot card: the width beside each slot, slots before the plate's outline. */
export const slotLines = ({ slots, plate, tongues }: SlotSheet): KerfCardLines => ({
  marks: slots.flatMap(({ drawnMm, label }) => labelAt(drawnMm.toFixed(2), label)),
  inside: slots.map(({ box }) => rectangleOf(box)),
  outlines: [rectangleOf(plate), ...tongues],
});
