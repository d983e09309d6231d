import { lazy, type ReactNode } from 'react';
import { shellText as words } from '../../../words/texts.ts';
import { fetchPart } from '../../state/fetchPart.ts';
import { usePageStoreState } from '../../state/workshop.tsx';
import { Fetched } from '../../parts/fetched/Fetched.tsx';

const PairScreen = lazy(() =>
  fetchPart(async () => ({
    default: (await import('./PairScreen.tsx')).PairScreen,
  })),
);

/** Asks for the desk's code where this phone is not let in. What stood on the screen waits behind it, as it was. */
export const LetInFirst = ({ children }: { readonly children: ReactNode }) => {
  const { sending } = usePageStoreState();
  const isAsked = sending === 'not-let-in';
  return (
    <>
      {isAsked ? (
        <Fetched waiting={<p className="page-wait">{words.loading}</p>}>
          <PairScreen />
        </Fetched>
      ) : null}
      <div className="shell-screen" hidden={isAsked}>
        {children}
      </div>
    </>
  );
};
