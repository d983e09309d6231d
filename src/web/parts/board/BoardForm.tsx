import { useState } from 'react';
import type { SheetCut } from '../../../core/study/sheetsCut.ts';
import { boardText as words, sheetText } from '../../../words/texts.ts';
import { withOptional } from '../../state/withOptional.ts';
import { Choice } from '../choice/Choice.tsx';
import { More } from '../more/More.tsx';
import { TextLine } from '../quantity/TextLine.tsx';

/** The delivery, and the board of it, that a card is cut from; a card that names no board has one of its own. */
export interface Board {
  readonly batch?: string;
  readonly sheet?: string;
}

export interface BoardFormProps {
  readonly board: Board;
  /** The boards that were cut before, the last first. */
  readonly before: readonly SheetCut[];
  readonly onChange: (board: Board) => void;
}

/** Older boards are seldom at hand, and can be named. */
const mostOffered = 4;

/** From which board a card is cut: one of its own, unless it is said to be one of before. */
export const BoardForm = ({ board, before, onChange }: BoardFormProps) => {
  // Somebody who types a number may pass one of before on the way.
  const [isTyping, setIsTyping] = useState(false);
  const chosen = before.findIndex(
    ({ batch, sheet }) => batch === board.batch && sheet === board.sheet,
  );
  const offered = before.slice(0, Math.max(mostOffered, chosen + 1));
  const take = (value: string): void => {
    setIsTyping(false);
    const known = before[Number(value)];
    const { batch } = known ?? board;
    onChange({
      ...(batch === undefined ? {} : { batch }),
      ...(known === undefined ? {} : { sheet: known.sheet }),
    });
  };
  const type = (name: keyof Board, text: string): void => {
    setIsTyping(true);
    onChange(withOptional(board, name, text.trim() === '' ? undefined : text));
  };
  return (
    <div className="stack">
      {offered.length === 0 ? null : (
        <Choice
          label={words.which}
          value={chosen < 0 ? 'new' : String(chosen)}
          options={[
            { value: 'new', label: words.own },
            ...offered.map((sheet, i) => ({ value: String(i), label: words.before(sheet) })),
          ]}
          onChange={take}
        />
      )}
      {chosen >= 0 && !isTyping ? null : (
        <div>
          <More title={words.name}>
            <div className="field-row">
              <TextLine
                label={sheetText.batch}
                hint={sheetText.batchHint}
                value={board.batch ?? ''}
                onChange={(text) => type('batch', text)}
              />
              <TextLine
                label={words.sheet}
                hint={words.sheetHint}
                value={board.sheet ?? ''}
                onChange={(text) => type('sheet', text)}
              />
            </div>
          </More>
        </div>
      )}
    </div>
  );
};
