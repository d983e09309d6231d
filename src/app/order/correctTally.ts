import type { Author } from '../../core/author.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { RecordedTally } from '../../core/study/study.ts';
import type { Ports } from '../ports/ports.ts';
import type { TallyToRecord } from './recordTally.ts';

/** What was really counted. The setting that was run and the kept setting that it belongs to stay. */
export type CorrectedCount = Omit<TallyToRecord, 'id' | 'at' | 'setting' | 'provenSettingId'>;

export interface TallyCorrected {
  readonly tally: RecordedTally;
  /** Absent: its sheet is gone. */
  readonly revision?: number;
}

/** Puts a mistyped count right where it stands: same order, same day, same counter; who put it right stands beside it. Sent twice it changes nothing. Refuses: `tally-not-found`. */
export const correctTally = (
  { store, clock, by }: Pick<Ports, 'store' | 'clock'> & Author,
  tallyId: string,
  counts: CorrectedCount,
): Promise<Outcome<TallyCorrected>> =>
  store.change(async (session) => {
    const known = await session.tally(tallyId);
    if (known === undefined) return refused('tally-not-found', { id: tallyId });
    const { id, at, setting, provenSettingId, orderId, foretold, by: counter } = known.tally;
    const tally: RecordedTally = {
      ...counts,
      id,
      at,
      setting,
      ...(provenSettingId === undefined ? {} : { provenSettingId }),
      ...(orderId === undefined ? {} : { orderId }),
      ...(foretold === undefined ? {} : { foretold }),
      ...(counter === undefined ? {} : { by: counter }),
      ...(by === undefined || by === counter ? {} : { correctedBy: by }),
    };
    await session.replaceTally(tally);
    const { studyId } = known;
    if (studyId === undefined) return done({ tally });
    return done({ tally, revision: await session.touch(studyId, clock.now()) });
  });
