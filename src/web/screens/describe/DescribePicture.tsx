import type { Card } from '../../../core/card/card.ts';
import { cellWordLines } from '../../../core/card/settingWords.ts';
import { describeText as words } from '../../../words/texts.ts';
import { CellSpeed } from '../../parts/reader/CellSpeed.tsx';
import { SheetPicture } from '../../parts/sheet/SheetPicture.tsx';
import { describedCard } from './describedCard.ts';
import { placeOf, type Described } from './useDescription.ts';

/** The card as described so far; a tap takes a cell away that is missing on the real one, or puts it back. */
export const DescribePicture = ({ described }: { readonly described: Described }) => {
  const { rows, description, card, toggle } = described;
  const whole = wholeCard(described);
  if (whole === undefined) return <p>{words.cannotYet}</p>;
  const cells = rows.flatMap((row, r) =>
    row.map((setting, c) => ({ setting, place: placeOf(r, c) })),
  );
  const share = (mm: number, ofMm: number): string => `${String((mm / ofMm) * 100)}%`;
  return (
    <div className="reader">
      <div className="reader-board" role="group" aria-label={words.picture}>
        <SheetPicture card={whole.shown(card)} words="elsewhere" />
        {cells.map(({ setting, place }, i) => {
          const cell = whole.full.cells[i];
          if (cell === undefined) return null;
          const missing = description.missing.includes(place);
          const [, power] = cellWordLines(setting);
          return (
            <button
              key={place}
              type="button"
              className="cell-button"
              aria-pressed={missing}
              style={{
                left: share(cell.xMm, whole.full.widthMm),
                top: share(whole.full.heightMm - cell.yMm, whole.full.heightMm),
                width: share(17, whole.full.widthMm),
                height: share(description.sizeMm + 1, whole.full.heightMm),
              }}
              onClick={() => toggle(place)}
            >
              <span className="cell-words">
                <CellSpeed setting={setting} />
                <br />
                {power}
              </span>{' '}
              {missing ? <span className="cell-state">{words.gone}</span> : null}
            </button>
          );
        })}
      </div>
    </div>
  );
};

/** The card with no cell missing, for the places of the buttons; and what of it is drawn. */
const wholeCard = ({ rows, description }: Described) => {
  const full = describedCard({
    code: 'AAAA',
    rows,
    shape: description.shape === 'other' ? 'circle' : description.shape,
    sizeMm: description.sizeMm,
  });
  if (full === undefined) return undefined;
  const shown = (card: Card | undefined): Card => ({
    ...full,
    cells: card?.cells ?? [],
    rungs: card?.rungs ?? [],
  });
  return { full, shown };
};
