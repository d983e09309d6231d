import { lazy, useState } from 'react';
import { shellText as words } from '../../../words/en/screens/shell.ts';
import { CallFailed } from '../../state/call.ts';
import { useHome } from '../../state/queries.ts';
import { FirstScreen } from '../first/FirstScreen.tsx';

const BedScreen = lazy(async () => ({ default: (await import('../bed/BedScreen.tsx')).BedScreen }));
const PairScreen = lazy(async () => ({
  default: (await import('../pair/PairScreen.tsx')).PairScreen,
}));

/**
 * The first day: a card to tap. From the second day: the sheet on the bed. Which of the two is settled when the screen
 * opens, so that the first tap does not take the card away from under the finger.
 */
export const HomeScreen = () => {
  const { data, isError, error } = useHome();
  const [opensOn, setOpensOn] = useState<'first' | 'bed'>();
  if (needsPairing(error)) return <PairScreen />;
  if (opensOn === undefined && (data !== undefined || isError)) {
    setOpensOn(data?.hasWork === true ? 'bed' : 'first');
  }
  if (opensOn === undefined) return <p className="page-wait">{words.loading}</p>;
  return opensOn === 'first' ? <FirstScreen /> : <BedScreen />;
};

/** A phone that has not typed the desk's code is refused by this status. */
const needsPairing = (error: Error | null): boolean =>
  error instanceof CallFailed && error.why.kind === 'refused' && error.why.status === 401;
