import { progress } from '../../../core/reading/progress.ts';
import { readingText as words } from '../../../words/texts.ts';
import { Action } from '../action/Action.tsx';
import type { Reading } from './useReading.ts';

/** How far the reading has come; undo; and one tap for all that did not come out. */
export const ReadingTools = ({ reading }: { readonly reading: Reading }) => {
  const { read, cells, unread } = progress(reading.cells);
  return (
    <div className="reader-tools">
      <p className="figure-text">{words.progress(read, cells)}</p>
      {reading.redo === undefined ? null : (
        <Action kind="quiet" onPress={reading.redo}>
          {words.redo}
        </Action>
      )}
      <Action kind="quiet" onPress={() => reading.undo?.()} isDisabled={reading.undo === undefined}>
        {words.undo}
      </Action>
      {read > 0 && unread > 0 ? (
        <Action onPress={reading.restStayed}>{words.rest(unread)}</Action>
      ) : null}
    </div>
  );
};
