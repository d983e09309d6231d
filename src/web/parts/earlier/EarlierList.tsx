import type { ReactNode } from 'react';
import { shellText } from '../../../words/texts.ts';
import { Action } from '../action/Action.tsx';
import { Section } from '../page/Page.tsx';
import './earlier.css';

export interface EarlierListProps<T> {
  readonly words: { readonly earlier: string; readonly none: string };
  /** Absent: not here yet, or the asking failed. */
  readonly tests: readonly T[] | undefined;
  readonly isPending: boolean;
  readonly onAgain: () => void;
  /** What stands in the line of one of them. */
  readonly children: (test: T) => ReactNode;
}

/** What was measured on this machine before, a line each; while it is fetched, and where it could not be, that. */
export const EarlierList = <T extends { readonly id: string }>(props: EarlierListProps<T>) => {
  const { words, tests, isPending, onAgain, children } = props;
  return (
    <Section title={words.earlier}>
      {tests === undefined ? (
        isPending ? (
          <p className="soft">{shellText.loading}</p>
        ) : (
          <div className="actions">
            <Action onPress={onAgain}>{shellText.tryAgain}</Action>
          </div>
        )
      ) : tests.length === 0 ? (
        <p className="soft">{words.none}</p>
      ) : (
        <ul className="earlier">
          {tests.map((test) => (
            <li key={test.id}>{children(test)}</li>
          ))}
        </ul>
      )}
    </Section>
  );
};
