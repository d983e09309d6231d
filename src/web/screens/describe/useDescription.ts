import { useMemo } from 'react';
import type { Card } from '../../../core/card/card.ts';
import type { TestShape } from '../../../core/card/testShapes.ts';
import type { Air } from '../../../core/machine/air.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import type { Board } from '../../parts/board/BoardForm.tsx';
import { newCode } from '../../state/newId.ts';
import { useDraft } from '../../state/useDraft.ts';
import { crossed, describedCard, oneByOne } from './describedCard.ts';

/** What was said of the card so far. */
export interface Description {
  readonly layout: 'crossed' | 'listed';
  readonly speedsMmPerS: readonly number[];
  readonly powersPct: readonly number[];
  readonly settings: readonly Setting[];
  readonly each: number;
  /** Of the whole card. */
  readonly air: Air | undefined;
  readonly shape: TestShape | 'other';
  readonly sizeMm: number;
  readonly otherLengthMm: number;
  /** Cells that are not on the card, by row and column. */
  readonly missing: readonly string[];
}

const start: Description = {
  layout: 'crossed',
  speedsMmPerS: [10, 12, 14, 16, 18, 20],
  powersPct: [30],
  settings: [],
  each: 1,
  air: undefined,
  shape: 'circle',
  sizeMm: 15,
  otherLengthMm: 80,
  missing: [],
};

export interface Described {
  readonly description: Description;
  readonly change: (part: Partial<Description>) => void;
  /** Every cell by row and column, the missing ones included. */
  readonly rows: readonly (readonly Setting[])[];
  readonly card: Card | undefined;
  readonly toggle: (place: string) => void;
  /** The card is made: the form begins anew. */
  readonly sent: () => void;
}

export const placeOf = (row: number, column: number): string => `${String(row)}/${String(column)}`;

/** Keeps what is said of the card, and the card that it amounts to. Another layout has its own missing cells. */
export const useDescription = (name: string, board: Board): Described => {
  const [{ description, code }, setDraft, sent] = useDraft({
    name: `describe.${name}`,
    initial: () => ({ description: start, code: newCode() }),
    of: start,
  });
  const setDescription = (next: Description): void => setDraft({ description: next, code });
  const { layout, speedsMmPerS, powersPct, settings, each } = description;
  const rows = useMemo(
    () =>
      layout === 'crossed' ? crossed(powersPct, speedsMmPerS, each) : oneByOne(settings, each),
    [layout, speedsMmPerS, powersPct, settings, each],
  );
  const { shape, sizeMm, otherLengthMm, missing, air } = description;
  const card = useMemo(
    () =>
      describedCard({
        code,
        rows: rows.map((row, r) =>
          row.map((setting, c) => (missing.includes(placeOf(r, c)) ? null : withAir(setting, air))),
        ),
        shape: shape === 'other' ? 'circle' : shape,
        sizeMm,
        ...(shape === 'other' ? { shapeLengthMm: otherLengthMm } : {}),
        ...board,
      }),
    [code, rows, missing, shape, sizeMm, otherLengthMm, board, air],
  );
  return {
    description,
    rows,
    card,
    change: (part) => {
      const moved =
        part.layout ?? part.speedsMmPerS ?? part.powersPct ?? part.settings ?? part.each;
      setDescription({
        ...description,
        ...(moved === undefined ? {} : { missing: [] }),
        ...part,
      });
    },
    sent,
    toggle: (place) => {
      const isOff = missing.includes(place);
      const next = isOff ? missing.filter((each) => each !== place) : [...missing, place];
      setDescription({ ...description, missing: next });
    },
  };
};

const withAir = (setting: Setting, air: Air | undefined): Setting =>
  air === undefined ? setting : { ...setting, air };
