import type { ProvenSetting } from '../core/book/provenSetting.ts';
import type { RecordedTally } from '../core/study/study.ts';
import type { Ports, ReadSession } from './ports.ts';
import type { StudySummary } from './stored.ts';

/** What the first screen needs. */
export interface Home {
  /** Whether anything of the workshop's own is stored. */
  readonly hasWork: boolean;
  readonly exampleOpen: boolean;
  /** The sheet on the bed: the study last touched, the workshop's own before the example's. */
  readonly latest?: {
    readonly study: StudySummary;
    readonly lastTally?: RecordedTally;
    /** The setting last kept from it. */
    readonly kept?: ProvenSetting;
  };
}

/** What is on the bed, its setting and its last tally. */
export const home = ({ store }: Pick<Ports, 'store'>): Promise<Home> => store.read(homeIn);

/** The same inside a session. */
export const homeIn = async (session: ReadSession): Promise<Home> => {
  const summaries = await session.summaries();
  const entries = await session.entries();
  const isExample = (thing: { readonly isExample: boolean }) => thing.isExample;
  const all = [...summaries, ...entries];
  const study = latestStudy(summaries);
  return {
    hasWork: !all.every(isExample),
    exampleOpen: all.some(isExample),
    ...(study === undefined ? {} : { latest: await latestOf(session, study, entries) }),
  };
};

/** The study last touched, the workshop's own before the example's; `summaries` as the store lists them. */
export const latestStudy = (summaries: readonly StudySummary[]): StudySummary | undefined =>
  summaries.find(({ isExample }) => !isExample) ?? summaries[0];

const latestOf = async (
  session: ReadSession,
  study: StudySummary,
  entries: readonly ProvenSetting[],
): Promise<NonNullable<Home['latest']>> => {
  const lastTally = (await session.study(study.id))?.study.tallies.at(-1);
  const kept = entries.find(({ cameFrom }) => cameFrom.studyId === study.id);
  return {
    study,
    ...(lastTally === undefined ? {} : { lastTally }),
    ...(kept === undefined ? {} : { kept }),
  };
};
