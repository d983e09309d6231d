import { useMemo } from 'react';
import type { Card } from '../../../core/card/card.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import type { HowItCame, ReadingSource } from '../../../core/reading/cellEvent.ts';
import type { EdgeAsRead } from '../../../core/reading/edge.ts';
import type { Grade, SpoiltReason } from '../../../core/reading/grade.ts';
import { readCard } from '../../../core/reading/readCard.ts';
import type { CellAsRead, ReadingEvent } from '../../../core/reading/readingEvent.ts';
import { standingEvents } from '../../../core/reading/standing.ts';
import { redoable, undoable } from '../../../core/reading/undoable.ts';
import { newId } from '../../state/newId.ts';

/** A card as it stands, and all that can be said of it. */
export interface Reading {
  readonly card: Card;
  readonly cells: readonly CellAsRead[];
  readonly grade: (cell: string, grade: Grade, how?: HowItCame) => void;
  /** Unread → out → hangs → stays → out. */
  readonly step: (cell: string) => void;
  readonly spoil: (cell: string, reason: SpoiltReason) => void;
  /** Undefined: what was said of the edge is taken back. */
  readonly gradeEdge: (cell: string, edge: EdgeAsRead | undefined) => void;
  /** The edge that was graded last on this card was cut through tape. */
  readonly isTaped: boolean;
  readonly clear: (cell: string) => void;
  readonly correct: (cell: string, setting: Setting) => void;
  readonly restStayed: () => void;
  /** Says several grades in one go, which one undo takes back. */
  readonly gradeAll: (grades: readonly GradeRead[]) => void;
  readonly undo: (() => void) | undefined;
  readonly redo: (() => void) | undefined;
}

/** A grade that was not tapped on the card itself. */
export interface GradeRead {
  readonly cell: string;
  readonly grade: Grade;
  readonly source: ReadingSource;
}

export const nextGrade: Readonly<Record<Grade, Grade>> = {
  out: 'hangs',
  hangs: 'stays',
  stays: 'out',
};

/** What is said of the card goes to `say`, as events. */
export const useReading = (
  card: Card,
  events: readonly ReadingEvent[],
  say: (events: readonly ReadingEvent[]) => void,
): Reading =>
  useMemo(() => {
    const own = events.filter(({ cardCode }) => cardCode === card.code);
    const { cells } = readCard(card, own);
    const last = undoable(own);
    const lastUndo = redoable(own);
    const stamp = () => ({ id: newId(), cardCode: card.code, at: new Date().toISOString() });
    /** What was said in one go carries one time, and is taken back in one go. */
    const takeBack = (event: ReadingEvent): void => {
      const undoes = event.kind === 'undone';
      const together = standingEvents(own).filter(
        ({ at, kind }) => at === event.at && (kind === 'undone') === undoes,
      );
      const at = new Date().toISOString();
      say(
        together.map(({ id }) => ({
          id: newId(),
          cardCode: card.code,
          at,
          kind: 'undone',
          eventId: id,
        })),
      );
    };
    const grade = (cell: string, given: Grade, how?: HowItCame): void =>
      say([
        { ...stamp(), kind: 'graded', cell, grade: given, ...(how === undefined ? {} : { how }) },
      ]);
    return {
      card,
      cells,
      grade,
      step: (cell) => {
        const reading = cells.find(({ id }) => id === cell)?.reading;
        grade(cell, reading?.kind === 'graded' ? nextGrade[reading.grade] : 'out');
      },
      spoil: (cell, reason) => say([{ ...stamp(), kind: 'spoilt', cell, reason }]),
      gradeEdge: (cell, edge) =>
        say([{ ...stamp(), kind: 'edge', cell, ...(edge ?? { edge: null }) }]),
      isTaped: isLastTaped(own),
      clear: (cell) => say([{ ...stamp(), kind: 'cleared', cell }]),
      correct: (cell, setting) => say([{ ...stamp(), kind: 'as-cut', cell, setting }]),
      restStayed: () => {
        const unread = cells.filter(({ reading }) => reading.kind === 'unread');
        const { at } = stamp();
        if (unread.length > 0)
          say(
            unread.map(({ id }) => ({ ...stamp(), at, kind: 'graded', cell: id, grade: 'stays' })),
          );
      },
      gradeAll: (grades) => {
        const { at } = stamp();
        if (grades.length > 0)
          say(grades.map((one) => ({ ...stamp(), at, kind: 'graded', ...one })));
      },
      undo: last && (() => takeBack(last)),
      redo: lastUndo && (() => takeBack(lastUndo)),
    };
  }, [card, events, say]);

const isLastTaped = (own: readonly ReadingEvent[]): boolean => {
  const last = standingEvents(own).findLast(({ kind }) => kind === 'edge');
  return last?.kind === 'edge' && last.taped === true;
};
