import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import type { PromiseWish } from '../../core/reading/promise.ts';
import { sameMaterialAs } from '../../core/stock/sameMaterial.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import { historyWishOf } from '../../core/study/historyWish.ts';
import type { Study } from '../../core/study/study.ts';
import { toCutStudy } from '../../core/study/toCutStudy.ts';
import { stripsIn, type CheckStrip } from '../../core/watch/findStrips.ts';
import { historyIn } from './history.ts';
import type { ReadSession } from '../ports/ports.ts';
import type { StripQuestion, StripToJudge } from '../sums/standingAsKnown.ts';

/** Studies that are opened to look for strips, the last touched first. */
const mostStudies = 30;
/** Older strips stand on the chart; nobody acts on them any more. */
const mostJudged = 4;

/**
 * The check strips of a kept setting, the last read first, the newest with the question what they say of `promise`; the
 * older ones count as unread.
 */
export const stripsOfEntry = async (
  session: ReadSession,
  entry: ProvenSetting,
  promise: PromiseWish = entry.promise,
): Promise<readonly StripToJudge[]> => {
  const strips = (await laterStudies(session, entry))
    .flatMap((study) => stripsIn(study, entry).map((strip) => ({ study, strip })))
    .sort((a, b) => later(b.strip.at, a.strip.at));
  const asked: StripToJudge[] = [];
  for (const [place, { study, strip }] of strips.entries()) {
    const isRead = strip.cells.some(({ grade }) => grade !== undefined);
    if (place >= mostJudged || !isRead) asked.push({ strip });
    else {
      const earlier = await historyIn(session, historyWishOf(study));
      const kept = { setting: entry.setting, promise };
      asked.push({ strip, question: questionOf(study, strip, kept, earlier) });
    }
  }
  return asked;
};

const later = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

/** Studies of the same material on the same machine that were begun since the setting was kept. */
const laterStudies = async (
  session: ReadSession,
  entry: ProvenSetting,
): Promise<readonly Study[]> => {
  const fitting = await session.sheetsOfKind({
    isExample: entry.isExample,
    machine: { id: entry.holdsFor.machineId },
    isSameMaterial: sameMaterialAs(entry.holdsFor.material),
    except: entry.cameFrom.studyId,
    begunSince: entry.keptAt,
    limit: mostStudies,
  });
  const studies: Study[] = [];
  for (const id of fitting) {
    const found = await session.studyAsReadable(id);
    if (found !== undefined) studies.push(found.study);
  }
  return studies;
};

/** The study as the strip's own cells alone: what else it holds is evidence of it too, but not of the strip. */
const questionOf = (
  study: Study,
  strip: CheckStrip,
  { setting, promise }: Pick<ProvenSetting, 'setting' | 'promise'>,
  earlier: readonly EarlierSheet[],
): StripQuestion => ({
  cut: {
    ...toCutStudy(study),
    cells: strip.cells,
    promise: { ...promise, for: 'batch' },
    ask: { powerPct: setting.powerPct },
  },
  earlier,
  setting,
  offerFaster: strip.of === 'new-batch',
});
