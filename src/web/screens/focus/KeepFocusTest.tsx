import type { UnkeptFocusTest } from '../../../core/focus/focusTest.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { focusText as words } from '../../../words/texts.ts';
import { KeepTest } from '../../parts/earlier/KeepTest.tsx';
import { callOrThrow } from '../../state/call.ts';
import { queryKeys } from '../../state/queries.ts';

export interface KeepFocusTestProps {
  /** Absent: nothing was found yet. */
  readonly test: UnkeptFocusTest | undefined;
  readonly onKept: () => void;
}

/** Keeps the test with its date. */
export const KeepFocusTest = ({ test, onKept }: KeepFocusTestProps) => (
  <div className="actions">
    <KeepTest
      words={words}
      test={test}
      record={(body) => callOrThrow(pageApi.recordFocusTest, { body })}
      queryKey={queryKeys.focusTests}
      onKept={onKept}
    />
  </div>
);
