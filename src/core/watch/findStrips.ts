import type { ProvenSetting } from '../book/provenSetting.ts';
import type { Card } from '../card/card.ts';
import type { StudyCell } from '../cutmodel/cutStudy.ts';
import { cornerPowerPct, type Setting } from '../machine/setting.ts';
import { stepNotFaster, stepNotSlower } from '../machine/speedSteps.ts';
import { referenceLengthMm } from '../reading/promise.ts';
import type { Study } from '../study/study.ts';
import { cellOrigins, toCutStudy } from '../study/toCutStudy.ts';
import type { Watched } from './watched.ts';

/** A check strip as it was read. */
export interface CheckStrip {
  readonly studyId: string;
  readonly code: string;
  /** In the reference sheet, or in a batch that the setting was not proven on. */
  readonly of: 'reference' | 'new-batch';
  readonly batch?: string;
  /** ISO 8601, UTC: when it was last read, else when its study was begun. */
  readonly at: string;
  /** All its cells, read or not. */
  readonly cellCount: number;
  /** What was read. */
  readonly cells: readonly StudyCell[];
}

/** More cells than this are a card. */
const mostCells = 10;

/** Whether a card is small enough for a strip. */
export const couldBeStrip = ({ cells }: Pick<Card, 'cells'>): boolean => cells.length <= mostCells;

/**
 * The check strips of a proven setting among the cards of another study. A strip is known by what it is: few cells, one
 * of them at the proven setting, the others faster and alike in everything else. Nobody has to say so, and a strip that
 * was cut by hand and described counts as well; one that was made for another setting is that one's.
 */
export const stripsIn = (study: Study, entry: ProvenSetting): readonly CheckStrip[] => {
  if (study.id === entry.cameFrom.studyId || study.isExample !== entry.isExample) return [];
  if (study.stripOf !== undefined && study.stripOf !== entry.id) return [];
  const strips = study.cards.filter(
    (card) => couldBeStrip(card) && isStrip(card.rungs, entry.setting),
  );
  if (strips.length === 0) return [];
  const cut = toCutStudy(study);
  const origins = cellOrigins(study);
  return strips.map((card): CheckStrip => {
    const batch = card.batch ?? study.stock.batch;
    const said = study.events.filter((event) => event.cardCode === card.code);
    return {
      studyId: study.id,
      code: card.code,
      of: sameBatch(batch, entry.holdsFor.batch) ? 'reference' : 'new-batch',
      ...(batch === undefined ? {} : { batch }),
      at: said.at(-1)?.at ?? study.createdAt,
      cellCount: card.cells.length,
      cells: cut.cells.filter((_, i) => origins[i]?.cardCode === card.code),
    };
  });
};

const isStrip = (rungs: readonly { readonly setting: Setting }[], proven: Setting): boolean =>
  rungs.length >= 2 &&
  rungs.every(({ setting }) => alikeButSpeed(setting, proven)) &&
  isTyped(Math.min(...rungs.map(({ setting }) => setting.speedMmPerS)), proven.speedMmPerS);

/** A card's speeds go in steps; an answer's are finer. */
const isTyped = (speed: number, answer: number): boolean =>
  speed >= stepNotFaster(answer) && speed <= stepNotSlower(answer);

const alikeButSpeed = (one: Setting, other: Setting): boolean =>
  Math.abs(one.powerPct - other.powerPct) <= 0.5 &&
  one.passes === other.passes &&
  Math.abs(cornerPowerPct(one) - cornerPowerPct(other)) <= 0.5;

const sameBatch = (one = '', other = ''): boolean =>
  one.trim().toLowerCase() === other.trim().toLowerCase();

/** A strip as the chart takes it; none where nothing of it was graded. */
export const watchedStrip = (strip: CheckStrip, proven: Setting): readonly Watched[] => {
  const graded = strip.cells.filter(({ grade }) => grade !== undefined);
  if (graded.length === 0) return [];
  return [
    {
      id: strip.code,
      at: strip.at,
      kind: 'strip',
      ...(strip.batch === undefined ? {} : { batch: strip.batch }),
      groups: graded.map(({ speedMmPerS, shapeLengthMm = referenceLengthMm, grade }) => ({
        lnFaster: Math.log(speedMmPerS / proven.speedMmPerS),
        lengthMm: shapeLengthMm,
        parts: 1,
        out: grade === 'out' ? 1 : 0,
      })),
      spoilt: strip.cells.length - graded.length,
    },
  ];
};
