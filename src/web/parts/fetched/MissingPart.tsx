import { useEffect, useState } from 'react';
import { fetchedText as words } from '../../../words/texts.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { call } from '../../state/call.ts';
import { usePageStoreState } from '../../state/workshop.tsx';
import { Action } from '../action/Action.tsx';
import { Notice } from '../notice/Notice.tsx';

const betweenLooksMs = 2000;

const answers = async (): Promise<boolean> => (await call(pageApi.health)).ok;

export interface MissingPartProps {
  /** missing: it could not be fetched. broken: it was, and failed. */
  readonly why: 'missing' | 'broken';
  readonly onTryAgain: () => void;
}

/**
 * Stands where a part of the page should. What could not be fetched once is never asked for again by the browser, so that
 * only loading the whole page anew helps: it does so by itself once a server that was away is back, and on demand. What
 * was tapped and typed is kept meanwhile.
 */
export const MissingPart = ({ why, onTryAgain }: MissingPartProps) => {
  const { unkept } = usePageStoreState();
  const [isAway, setIsAway] = useState(false);
  const [wantsIt, setWantsIt] = useState(false);
  const reloads = why === 'missing';
  useEffect(() => {
    if (!reloads) return undefined;
    let isWanted = true;
    let wasAway = false;
    const look = async (): Promise<void> => {
      const isThere = await answers();
      if (!isWanted) return;
      // Whoever was away and is back is asked at once. A server that was there all along may lack the part for good: then
      // only a person asks again, so that the page does not load itself over and over.
      if (isThere && wasAway) setWantsIt(true);
      wasAway = !isThere;
      setIsAway(wasAway);
      timer = setTimeout(() => void look(), betweenLooksMs);
    };
    let timer = setTimeout(() => void look(), 0);
    return () => {
      isWanted = false;
      clearTimeout(timer);
    };
  }, [reloads]);
  useEffect(() => {
    // What lies on no shelf would go with the page.
    if (wantsIt && !isAway && unkept === 0) location.reload();
  }, [wantsIt, isAway, unkept]);
  return (
    <div className="page page-narrow">
      <Notice tone="care" title={reloads ? words.missing : words.broken}>
        <p>{reloads ? (isAway ? words.away : words.older) : words.brokenMore}</p>
        <Action
          kind="strong"
          onPress={() => {
            if (reloads) setWantsIt(true);
            else onTryAgain();
          }}
        >
          {words.tryAgain}
        </Action>
      </Notice>
    </div>
  );
};
