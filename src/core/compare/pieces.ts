import type { StudyCell } from '../cutmodel/cutStudy.ts';
import { airKey } from '../machine/air.ts';
import { done, refused, type Outcome } from '../problem.ts';
import { sameMaterialAs } from '../stock/sameMaterial.ts';
import type { Study } from '../study/study.ts';
import { cellOrigins, toCutStudy } from '../study/toCutStudy.ts';
import { gradedIn, type Difference, type TwoConditions } from './twoConditions.ts';

/** What may be laid on a side: one card's cells, or those of them that were cut with one air. */
export interface Piece {
  readonly studyId: string;
  readonly card: string;
  /** As `airKey` writes it; absent: the whole card. */
  readonly air?: string;
}

/** A piece with what is known of it, for choosing. */
export interface PieceRead extends Piece {
  readonly cells: number;
  readonly out: number;
  readonly sheet?: string;
  readonly batch?: string;
}

/** Which pieces lie on which side, and what differs between the sides. */
export interface ComparisonWish {
  readonly differs: Difference;
  readonly one: readonly Piece[];
  readonly other: readonly Piece[];
  /** Whether somebody said that all was cut from one sheet. Absent: the sheets' names tell. */
  readonly oneSheet?: boolean;
  readonly worthPct: number;
  readonly tellPct: number;
}

/** A text that is equal for equal pieces. */
export const pieceKey = ({ studyId, card, air = '' }: Piece): string =>
  [studyId, card, air].join('/');

/** Every read card of a study; one that was cut with several airs air by air as well. O(cells). */
export const piecesIn = (study: Study): readonly PieceRead[] => {
  const cells = cellsByCard(study);
  return study.cards.flatMap(({ code, sheet, batch }): readonly PieceRead[] => {
    const graded = gradedIn(cells.get(code) ?? []);
    if (graded.length === 0) return [];
    const airs = [...new Set(graded.map((cell) => airKey(cell.air)))];
    const piece = (some: readonly StudyCell[], air?: string): PieceRead => ({
      studyId: study.id,
      card: code,
      ...(air === undefined ? {} : { air }),
      cells: some.length,
      out: some.filter(({ grade }) => grade === 'out').length,
      ...(sheet === undefined ? {} : { sheet }),
      ...(batch === undefined ? {} : { batch }),
    });
    return airs.length < 2
      ? [piece(graded)]
      : airs.map((air) =>
          piece(
            graded.filter((cell) => airKey(cell.air) === air),
            air,
          ),
        );
  });
};

/**
 * The two sides as the model takes them, from the studies that the pieces name. Sheets of different studies are one only
 * where batch and sheet are named, and named alike. Refuses: `compare-piece-on-both-sides`, `compare-two-materials`,
 * `compare-side-unread`.
 */
export const conditionsOf = (
  studies: readonly Study[],
  { differs, one, other, oneSheet = false, worthPct, tellPct }: ComparisonWish,
): Outcome<TwoConditions> => {
  const taken = new Set(one.map(pieceKey));
  if (other.some((piece) => taken.has(pieceKey(piece))))
    return refused('compare-piece-on-both-sides');
  const studyOf = (pieces: readonly Piece[]): Study | undefined =>
    studies.find(({ id }) => id === pieces[0]?.studyId);
  const [first, second] = [studyOf(one), studyOf(other)];
  if (first === undefined) return refused('compare-side-unread', { side: 'first' });
  if (second === undefined) return refused('compare-side-unread', { side: 'second' });
  const isSame = sameMaterialAs(first.stock.material);
  const named = new Set([...one, ...other].map(({ studyId }) => studyId));
  const stranger = studies.find(({ id, stock }) => named.has(id) && !isSame(stock.material));
  if (stranger !== undefined)
    return refused('compare-two-materials', {
      first: first.stock.material,
      second: stranger.stock.material,
    });
  const cellsOf = (pieces: readonly Piece[]): readonly StudyCell[] =>
    pieces.flatMap((piece) => {
      const study = studies.find(({ id }) => id === piece.studyId);
      return study === undefined ? [] : cellsOfPiece(study, piece).map(placed(study, oneSheet));
    });
  const otherMachine = first.machine.name === second.machine.name ? undefined : second.machine;
  return done({
    differs,
    machine: first.machine,
    ...(otherMachine === undefined ? {} : { otherMachine }),
    stock: toCutStudy(first).stock,
    one: cellsOf(one),
    other: cellsOf(other),
    worthPct,
    tellPct,
  });
};

const cellsByCard = (study: Study): ReadonlyMap<string, readonly StudyCell[]> => {
  const { cells } = toCutStudy(study);
  const origins = cellOrigins(study);
  const found = new Map<string, StudyCell[]>();
  cells.forEach((cell, i) => {
    const code = origins[i]?.cardCode ?? '';
    found.set(code, [...(found.get(code) ?? []), cell]);
  });
  return found;
};

const cellsOfPiece = (study: Study, { card, air }: Piece): readonly StudyCell[] =>
  (cellsByCard(study).get(card) ?? []).filter(
    (cell) => air === undefined || airKey(cell.air) === air,
  );

/** A cell with its thickness, and with a sheet that no other study's sheet is taken for. */
const placed =
  (study: Study, oneSheet: boolean) =>
  ({ batch, sheet = '', ...cell }: StudyCell): StudyCell => {
    const thick = { thicknessMm: toCutStudy(study).stock.thicknessMm, ...cell };
    if (oneSheet) return { ...thick, sheet: 'one sheet' };
    return batch === undefined
      ? { ...thick, sheet: `${study.id}/${sheet}` }
      : { ...thick, batch, sheet };
  };
