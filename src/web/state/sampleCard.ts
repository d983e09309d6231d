import { useCallback, useMemo, useState } from 'react';
import type { Study } from '../../core/study/study.ts';
import { tabShelf } from './browserShelf.ts';
import { applied, type Change } from './change.ts';
import { firstDraft, type FirstDraft } from './firstDraft.ts';
import type { PageStore } from './pageStore.ts';
import { keepOn } from './shelf.ts';
import { useKeptStudy, useWorkshop, type Workshop } from './workshop.tsx';

/** What lies on the first screen, and what was said of it there. */
interface Sample {
  readonly draft: FirstDraft;
  readonly said: readonly Change[];
}

export interface SampleCard {
  readonly draft: FirstDraft;
  readonly study: Study;
  /** Something was said of it, and nobody has said yet whose it is. */
  readonly isOpen: boolean;
  /** The workshop as the first screen has it: what is said of the sample stays here. */
  readonly workshop: Workshop;
  /** It is the person's own card: a sheet of the workshop from now on, with all that was said of it. */
  readonly own: () => void;
  /** It was only tried: nothing stays. */
  readonly clear: () => void;
}

const key = 'throughcut.sample';

/**
 * The card of the first screen. Whoever taps on it may only want to see what happens: it becomes a sheet of the workshop
 * when somebody says so, not before. Until then it outlives a reload of this tab, and nothing else.
 */
export const useSampleCard = (): SampleCard => {
  const workshop = useWorkshop();
  const { store } = workshop;
  const [sample, setSample] = useState(readSample);
  const { draft, said } = sample;
  const owned = useKeptStudy(draft.study.id);
  const keep = useCallback((change: (before: Sample) => Sample) => {
    setSample((before) => {
      const after = change(before);
      if (after.said.length === 0) tabShelf.removeItem(key);
      else keepOn(tabShelf, key, JSON.stringify(after));
      return after;
    });
  }, []);
  const asIfKept = useMemo((): Workshop => {
    const make: PageStore['make'] = (...changes) => {
      keep(({ draft: on, said: before }) => ({ draft: on, said: [...before, ...changes] }));
    };
    return { ...workshop, store: { ...store, make } };
  }, [workshop, store, keep]);
  return {
    draft,
    study: owned ?? said.reduce((study, change) => applied(study, change) ?? study, draft.study),
    isOpen: owned === undefined && said.length > 0,
    workshop: owned === undefined ? asIfKept : workshop,
    own: () => {
      const { cards, ...head } = draft.study;
      const studyId = draft.study.id;
      store.make(
        { kind: 'start', studyId, study: { ...head, cards: [] } },
        ...cards.map((card) => ({ kind: 'add-card', studyId, card }) as const),
        ...said,
      );
      tabShelf.removeItem(key);
    },
    clear: () => keep(() => ({ draft: firstDraft(), said: [] })),
  };
};

/** A copy that this page itself wrote. */
const readSample = (): Sample => {
  try {
    const kept: unknown = JSON.parse(tabShelf.getItem(key) ?? 'null');
    if (typeof kept === 'object' && kept !== null && 'draft' in kept) return kept as Sample;
  } catch {
    // Nobody could have written that here: it is begun anew.
  }
  return { draft: firstDraft(), said: [] };
};
