import { useState } from 'react';
import { shellText as words } from '../../../words/texts.ts';
import { CallFailed, isNotLetIn } from '../../state/call.ts';
import { useHome } from '../../state/queries.ts';
import { withWords } from '../../state/withWords.ts';
import { usePageStoreState } from '../../state/workshop.tsx';
import { FirstScreen } from '../first/FirstScreen.tsx';

const BedScreen = withWords(async () => (await import('../bed/BedScreen.tsx')).BedScreen);

/**
 * The first day: a card to tap. From the second day: the sheet on the bed. Which of the two is settled when the screen
 * opens, so that the first tap does not take the card away from under the finger.
 */
export const HomeScreen = () => {
  const { data, isError, error } = useHome();
  const { waiting } = usePageStoreState();
  const [opensOn, setOpensOn] = useState<'first' | 'bed'>();
  // A phone that is not let in yet is asked for the code first; what it then opens on is for the server to say.
  const isSettled = data !== undefined || (isError && !isNotLetInYet(error));
  if (opensOn === undefined && isSettled) {
    // Without the server, what this browser has not sent yet tells that there is work.
    const hasWork = data === undefined ? waiting > 0 : data.hasWork;
    setOpensOn(hasWork ? 'bed' : 'first');
  }
  if (opensOn === undefined) return <p className="page-wait">{words.loading}</p>;
  return opensOn === 'first' ? <FirstScreen /> : <BedScreen />;
};

const isNotLetInYet = (error: Error): boolean =>
  error instanceof CallFailed && isNotLetIn(error.why);
