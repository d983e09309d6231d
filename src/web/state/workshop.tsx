import { createContext, useContext, useEffect, useState, useSyncExternalStore } from 'react';
import type { Study } from '../../core/study/study.ts';
import type { CallProblem } from './call.ts';
import type { PageStore, PageStoreState } from './pageStore.ts';
import type { Model } from './model.ts';

/** What every screen may use: the store of changes and the model's thread. */
export interface Workshop {
  readonly store: PageStore;
  readonly model: Model;
}

const Context = createContext<Workshop | undefined>(undefined);

export const WorkshopProvider = Context.Provider;

export const useWorkshop = (): Workshop => {
  const workshop = useContext(Context);
  if (workshop === undefined) throw new Error('a screen was drawn outside the workshop');
  return workshop;
};

export const usePageStoreState = (): PageStoreState => {
  const { store } = useWorkshop();
  return useSyncExternalStore(store.subscribe, store.state);
};

/** The study as it stands on this page now; undefined until something of it is known. */
export const useKeptStudy = (id: string): Study | undefined => {
  const { store } = useWorkshop();
  return useSyncExternalStore(store.subscribe, () => store.study(id));
};

export interface OpenedStudy {
  readonly study: Study | undefined;
  readonly problem: CallProblem | undefined;
  readonly loading: boolean;
}

/** The study, with the server's copy fetched when the screen opens. */
export const useStudy = (id: string): OpenedStudy => {
  const { store } = useWorkshop();
  const study = useKeptStudy(id);
  const [fetched, setFetched] = useState<{ id: string; problem: CallProblem | undefined }>();
  const isLetIn = usePageStoreState().sending !== 'not-let-in';
  useEffect(() => {
    let wanted = true;
    void store.load(id).then((problem) => {
      if (wanted) setFetched({ id, problem });
    });
    return () => {
      wanted = false;
    };
  }, [store, id, isLetIn]);
  const own = fetched?.id === id ? fetched : undefined;
  return { study, problem: own?.problem, loading: study === undefined && own === undefined };
};
