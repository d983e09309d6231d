import type { ReactNode } from 'react';
import { roleText as words, shellText } from '../../../words/texts.ts';
import { pages } from '../../state/pages.ts';
import { useMay, type Takes } from '../../state/role.ts';
import { ActionLink } from '../action/Action.tsx';
import { Page } from './Page.tsx';

export interface ReservedProps {
  /** The route that the whole screen is there for. */
  readonly call: Takes;
  readonly title: string;
  readonly children: ReactNode;
}

/** A screen that is there to do one thing: who may not do it, and came by a link, is told whose it is. */
export const Reserved = ({ call, title, children }: ReservedProps) => {
  const may = useMay();
  if (may(call)) return children;
  return (
    <Page title={title} lead={words.notHere(words.least[call.least])}>
      <div className="actions">
        <ActionLink kind="strong" href={pages.start}>
          {shellText.toStart}
        </ActionLink>
      </div>
    </Page>
  );
};
