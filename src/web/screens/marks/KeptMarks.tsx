import { markKinds } from '../../../core/marking/mark.ts';
import type { KeptMarks as Kept, MarkTest } from '../../../core/marking/markTest.ts';
import { marksText as words } from '../../../words/texts.ts';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
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
      const found = kept[kind];
      if (found === undefined) return null;
      const { test, beyond } = found;
      return (
        <div key={kind}>
          <dt>{words.kinds[kind]}</dt>
          <dd>
            {beyond === undefined ? (
              words.mark(test.mark)
            ) : (
              <ProblemNotice tone="stop" problem={beyond} />
            )}
            {test.note === undefined ? null : <p className="small">{test.note}</p>}
            {children?.(test)}
          </dd>
        </div>
      );
    })}
  </dl>
);
