import { pieceKey, type ComparisonWish, type PieceRead } from '../../../core/compare/pieces.ts';
import {
  usualTellPct,
  usualWorthPct,
  type Difference,
} from '../../../core/compare/twoConditions.ts';

export const sideNames = ['none', 'one', 'other'] as const;
export type Side = (typeof sideNames)[number];

/** What a person has said on the screen so far. */
export interface CompareDraft {
  readonly differs?: Difference;
  /** By piece; what is absent lies as {@link usualSides} lays it. */
  readonly laid: Readonly<Record<string, Side>>;
  readonly oneSheet: boolean;
  readonly nameOne: string;
  readonly nameOther: string;
  readonly worthPct: number;
  readonly tellPct: number;
}

export const emptyDraft: CompareDraft = {
  laid: {},
  oneSheet: false,
  nameOne: '',
  nameOther: '',
  worthPct: usualWorthPct,
  tellPct: usualTellPct,
};

/** Two pieces and no more are laid one on each side; of more, a person must say. */
const usualSides = (pieces: readonly PieceRead[]): readonly Side[] =>
  pieces.length === 2 ? ['one', 'other'] : pieces.map(() => 'none');

/** On which side each piece lies. */
export const sidesOf = (pieces: readonly PieceRead[], draft: CompareDraft): readonly Side[] => {
  const usual = usualSides(pieces);
  return pieces.map((piece, i) => draft.laid[pieceKey(piece)] ?? usual[i] ?? 'none');
};

/** The study to which a side's next card belongs: batches and machines have their own, else that of the screen. */
export const studyOfSide = (
  wish: ComparisonWish | undefined,
  side: 'one' | 'other',
  ofScreen: string,
): string => {
  if (wish?.differs !== 'batch' && wish?.differs !== 'machine') return ofScreen;
  const ids = new Set(wish[side].map(({ studyId }) => studyId));
  const [only = ofScreen] = ids;
  return ids.size === 1 ? only : ofScreen;
};

/** Parts of one card that differ in air are likely compared for their air. */
export const differsOf = (pieces: readonly PieceRead[], { differs }: CompareDraft): Difference =>
  differs ?? (pieces.some(({ air }) => air !== undefined) ? 'air' : 'other');

/** The wish as the core takes it; undefined while a side is empty. */
export const wishOf = (
  pieces: readonly PieceRead[],
  draft: CompareDraft,
): ComparisonWish | undefined => {
  const sides = sidesOf(pieces, draft);
  const on = (side: Side): readonly PieceRead[] => pieces.filter((_, i) => sides[i] === side);
  const [one, other] = [on('one'), on('other')];
  if (one.length === 0 || other.length === 0) return undefined;
  const { oneSheet, worthPct, tellPct } = draft;
  const differs = differsOf(pieces, draft);
  return { differs, one, other, oneSheet: oneSheet && differs !== 'batch', worthPct, tellPct };
};
