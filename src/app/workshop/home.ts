import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import type { Problem } from '../../core/problem.ts';
import type { Standing } from '../../core/standing/standing.ts';
import type { Stock } from '../../core/stock/stock.ts';
import type { RecordedTally } from '../../core/study/study.ts';
import { readKept, withStanding } from '../shared/entryStanding.ts';
import type { AskingPorts, ReadSession } from '../ports/ports.ts';
import type { KeptQuestion } from '../sums/standingAsKnown.ts';
import type { StudySummary } from '../ports/stored.ts';

/** What the first screen needs. */
export interface Home {
  /** Whether anything of the workshop's own is stored. */
  readonly hasWork: boolean;
  readonly exampleOpen: boolean;
  /** The sheet on the bed: the one last put there, the workshop's own before the example's. */
  readonly latest?: {
    readonly study: StudySummary;
    readonly lastTally?: RecordedTally;
    /** The setting last kept from it. */
    readonly kept?: ProvenSetting;
    /** How that stands. */
    readonly standing?: Standing;
  };
  /** Sheets that were removed and can come back, the last removed first. */
  readonly removed?: readonly {
    readonly id: string;
    readonly stock: Stock;
    readonly removedAt: string;
  }[];
  /** What is stored but cannot be read, where anything of what stands here is. */
  readonly unreadable?: readonly Problem[];
}

/** What is on the bed, its setting and its last tally. The cost does not grow with the workshop. */
export const home = async ({
  store,
  model,
}: Pick<AskingPorts, 'store' | 'model'>): Promise<Home> => {
  const { latest, ...rest } = await store.read(stored);
  if (latest === undefined) return rest;
  const { kept, ...others } = latest;
  if (kept === undefined) return { ...rest, latest: others };
  const { entry, standing } = await withStanding(model, kept);
  return { ...rest, latest: { ...others, kept: entry, standing } };
};

interface HomeStored extends Omit<Home, 'latest'> {
  readonly latest?: Omit<NonNullable<Home['latest']>, 'kept' | 'standing'> & {
    readonly kept?: KeptQuestion;
  };
}

const stored = async (session: ReadSession): Promise<HomeStored> => {
  const { own, example } = await session.holds();
  const study = await session.onBed();
  const latest = study === undefined ? {} : { latest: await latestOf(session, study) };
  const removed = (await session.removedStudies()).map(({ study: { id, stock }, removedAt }) => ({
    id,
    stock,
    removedAt,
  }));
  const unreadable = session.passedOver();
  return {
    hasWork: own,
    exampleOpen: example,
    ...latest,
    ...(removed.length === 0 ? {} : { removed }),
    ...(unreadable.length === 0 ? {} : { unreadable }),
  };
};

const latestOf = async (
  session: ReadSession,
  study: StudySummary,
): Promise<NonNullable<HomeStored['latest']>> => {
  const lastTally = await session.lastTallyOf(study.id);
  const kept = await session.keptFrom(study.id);
  return {
    study,
    ...(lastTally === undefined ? {} : { lastTally }),
    ...(kept === undefined ? {} : { kept: await readKept(session, kept) }),
  };
};
