import type { ProvenSetting } from '../core/book/provenSetting.ts';
import { rememberNewest } from '../core/cutmodel/rememberNewest.ts';
import type { CutStudy } from '../core/cutmodel/cutStudy.ts';
import type { Setting } from '../core/machine/setting.ts';
import type { PromiseWish } from '../core/reading/promise.ts';
import { sameMaterialAs } from '../core/stock/sameMaterial.ts';
import { fitWithEarlier } from '../core/study/answerWithEarlier.ts';
import type { EarlierSheet } from '../core/study/earlierSheet.ts';
import { historyWishOf } from '../core/study/historyWish.ts';
import type { Study } from '../core/study/study.ts';
import { toCutStudy } from '../core/study/toCutStudy.ts';
import { stripsIn, type CheckStrip } from '../core/watch/findStrips.ts';
import { stripVerdict, type StripVerdict } from '../core/watch/stripVerdict.ts';
import { historyIn } from './gatherHistory.ts';
import type { ReadSession } from './ports.ts';

export interface StripJudged {
  readonly strip: CheckStrip;
  readonly verdict: StripVerdict;
}

/** Studies that are opened to look for strips, the last touched first. */
const mostStudies = 30;
/** Older strips stand on the chart; nobody acts on them any more. */
const mostJudged = 4;

/**
 * The check strips of a kept setting, the last read first, the newest with what they say of `promise`; the older ones count
 * as unread.
 * ~0.3 s for each that is judged.
 */
export const stripsOfEntry = async (
  session: ReadSession,
  entry: ProvenSetting,
  promise: PromiseWish = entry.promise,
): Promise<readonly StripJudged[]> => {
  const strips = (await laterStudies(session, entry))
    .flatMap((study) => stripsIn(study, entry).map((strip) => ({ study, strip })))
    .sort((a, b) => later(b.strip.at, a.strip.at));
  const judged: StripJudged[] = [];
  for (const [place, { study, strip }] of strips.entries()) {
    const isRead = strip.cells.some(({ grade }) => grade !== undefined);
    judged.push({
      strip,
      verdict:
        place < mostJudged && isRead
          ? verdictOf(
              questionOf(
                study,
                strip,
                { setting: entry.setting, promise },
                await historyIn(session, historyWishOf(study)),
              ),
            )
          : { kind: 'unread' },
    });
  }
  return judged;
};

const later = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

/** Studies of the same material on the same machine that were begun since the setting was kept. */
const laterStudies = async (
  session: ReadSession,
  entry: ProvenSetting,
): Promise<readonly Study[]> => {
  const all = (await session.summaries()).filter(({ isExample }) => isExample === entry.isExample);
  const isSame = sameMaterialAs(entry.holdsFor.material);
  const fitting = all.filter(
    (one) =>
      one.id !== entry.cameFrom.studyId &&
      one.createdAt >= entry.keptAt &&
      isSame(one.stock.material) &&
      one.machineId === entry.holdsFor.machineId,
  );
  const studies: Study[] = [];
  for (const { id } of fitting.slice(0, mostStudies)) {
    const found = await session.studyAsReadable(id);
    if (found !== undefined) studies.push(found.study);
  }
  return studies;
};

interface StripQuestion {
  readonly cut: CutStudy;
  readonly earlier: readonly EarlierSheet[];
  readonly setting: Setting;
  readonly offerFaster: boolean;
}

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

const verdictOf = rememberNewest(
  ({ cut, earlier, setting, offerFaster }: StripQuestion): StripVerdict =>
    stripVerdict(fitWithEarlier(cut, earlier), setting, offerFaster),
);
