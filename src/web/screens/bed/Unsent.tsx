import { bedText as words } from '../../../words/texts.ts';
import { ActionLink } from '../../parts/action/Action.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { usePageStoreState } from '../../state/workshop.tsx';
import { pageAt, pages } from '../../state/pages.ts';

export interface UnsentProps {
  /** The sheet on the bed; absent: whichever this browser has something of. */
  readonly studyId?: string;
  /** What stands there comes from the workshop computer, which has not heard of it. */
  readonly isNotCounted?: boolean;
}

/** What was said of a sheet and cannot be sent now, counted: so also after the browser was closed and opened again. */
export const Unsent = ({ studyId, isNotCounted = false }: UnsentProps) => {
  const { sending, waitingOf } = usePageStoreState();
  // On its way, as after every tap: nothing to tell of.
  if (sending === 'all-sent' || sending === 'sending') return null;
  return [...waitingOf]
    .filter(([id]) => studyId === undefined || id === studyId)
    .map(([id, steps]) => (
      <Notice key={id} tone="care" title={words.unsent(steps)}>
        <p>{isNotCounted ? words.unsentNotCounted : words.unsentMore}</p>
        {studyId === undefined ? (
          <div className="actions">
            <ActionLink href={pageAt(pages.study, { id })}>{words.open}</ActionLink>
          </div>
        ) : null}
      </Notice>
    ));
};
