import { markKinds } from '../../../core/marking/mark.ts';
import type { KeptMarks as Kept, MarkTest } from '../../../core/marking/markTest.ts';
import { marksText as words } from '../../../words/texts.ts';
import '../book/book.css';

export interface KeptMarksProps {
  readonly kept: Kept;
  /** What stands behind each. */
  readonly children?: (test: MarkTest) => React.ReactNode;
}

/** The latest mark of each kind, a line each, with its note. */
export const KeptMarks = ({ kept, children }: KeptMarksProps) => (
  <dl className="entry-facts">
    {markKinds.map((kind) => {
      const test = kept[kind];
      return test === undefined ? null : (
        <div key={kind}>
          <dt>{words.kinds[kind]}</dt>
          <dd>
            {words.mark(test.mark)}
            {test.note === undefined ? null : <p className="small">{test.note}</p>}
            {children?.(test)}
          </dd>
        </div>
      );
    })}
  </dl>
);
