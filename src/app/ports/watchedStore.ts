import type { Session, Store } from './ports.ts';
import type { StoredChange } from './storedChange.ts';

/**
 * A store that tells of each study that a session has changed, once the session is kept and not before: here, and to other
 * programs that are at work in the same store.
 */
export const watchedStore = (store: Store, tell: (change: StoredChange) => void): Store => ({
  ...store,
  change: async (work) => {
    const changes = new Map<string | undefined, StoredChange>();
    const outcome = await store.change(async (session) => {
      const done = await work(noting(session, changes));
      if (done.ok && changes.size > 0) await session.announce([...changes.values()]);
      return done;
    });
    if (outcome.ok) for (const change of changes.values()) tell(change);
    return outcome;
  },
});

/** Of several changes of one study only the last is told. */
const noting = (session: Session, changes: Map<string | undefined, StoredChange>): Session => {
  const note = (change: StoredChange): void => void changes.set(change.studyId, change);
  return {
    ...session,
    touch: async (studyId, at) => {
      const revision = await session.touch(studyId, at);
      note({ studyId, revision });
      return revision;
    },
    insertMachine: async (machine) => {
      await session.insertMachine(machine);
      note({});
    },
    replaceMachine: async (machine) => {
      const revised = await session.replaceMachine(machine);
      for (const study of revised) note(study);
      note({});
      return revised;
    },
    deleteMachine: async (id) => {
      await session.deleteMachine(id);
      note({});
    },
    insertStudy: async (study, touchedAt) => {
      await session.insertStudy(study, touchedAt);
      note({ studyId: study.id, revision: 1 });
    },
    deleteStudy: async (studyId) => {
      await session.deleteStudy(studyId);
      note({ studyId });
    },
    putOnBed: async (studyId, at) => {
      await session.putOnBed(studyId, at);
      note({});
    },
    insertEntry: async (entry) => {
      await session.insertEntry(entry);
      note({});
    },
    replaceEntry: async (entry) => {
      await session.replaceEntry(entry);
      note({});
    },
    deleteEntry: async (id) => {
      await session.deleteEntry(id);
      note({});
    },
    putBackEntry: async (changeId, entry) => {
      await session.putBackEntry(changeId, entry);
      note({});
    },
    insertMachineTest: async (name, test) => {
      await session.insertMachineTest(name, test);
      note({});
    },
    deleteMachineTest: async (name, id) => {
      await session.deleteMachineTest(name, id);
      note({});
    },
    deleteExample: async () => {
      await session.deleteExample();
      note({});
    },
  };
};
