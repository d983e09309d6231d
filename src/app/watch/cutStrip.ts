import { stripBatch } from '../../core/watch/stripBatch.ts';
import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import { designCard, type DesignedCard } from '../../core/card/designCard.ts';
import { stripSheets } from '../../core/card/stripSheets.ts';
import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { Stock } from '../../core/stock/stock.ts';
import { cardRequestKnowing } from '../../core/study/cardRequestKnowing.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import { historyWishOf } from '../../core/study/historyWish.ts';
import type { Study } from '../../core/study/study.ts';
import { toCutStudy } from '../../core/study/toCutStudy.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import { namedMaterial } from '../../core/stock/namedMaterial.ts';
import { findEntry } from '../shared/entryStanding.ts';
import { freeCode } from '../shared/freeCode.ts';
import { historyIn } from '../shared/history.ts';
import { defaultMachine } from '../shared/machineOf.ts';
import type { AskingPorts, Ports, Session } from '../ports/ports.ts';
import type { StoredStudy } from '../ports/stored.ts';

export interface StripWish {
  /** Made by whoever asks, so that it may be sent twice: the study that the strip becomes. */
  readonly id?: string;
  /** The reference sheet, of the batch that the setting was proven on, or a new batch. */
  readonly of: 'reference' | 'new-batch';
  /** Name of the new batch. */
  readonly batch?: string;
  /** What the caliper says of this sheet; none: as the book has it. */
  readonly thicknessReadingsMm?: readonly number[];
  /** 4 to 6; absent: 6. */
  readonly cells?: number;
  /** The waste that there is room in. */
  readonly sheetMm?: readonly [widthMm: number, heightMm: number];
}

export interface StripCut extends DesignedCard {
  readonly studyId: string;
}

/**
 * Designs a check strip for an entry of the book and lays it down as a small study of its own, so that it is taken to the
 * machine and read like any card. Refuses: `entry-not-found`, a refused material, `strip-needs-batch`,
 * a setting that machine or sheet do not bear,
 * `strip-too-narrow`, what no card can be made of, what `Model` refuses. ~0.4 s.
 */
export const cutStrip = async (
  ports: AskingPorts,
  idOrCode: string,
  wish: StripWish,
): Promise<Outcome<StripCut>> => {
  const { store, ids, model } = ports;
  const id = wish.id ?? ids.newId();
  const begun = await store.change((session) => beginning(session, ports, { idOrCode, wish, id }));
  if (!begun.ok) return begun;
  if ('cut' in begun.value) return done(begun.value.cut);
  const { entry, study, earlier } = begun.value;
  const cut: CutStudy = {
    ...toCutStudy(study),
    promise: { ...study.promise, for: 'batch' },
  };
  const { cells } = wish;
  const wanted = {
    cut,
    earlier,
    setting: entry.setting,
    ...(cells === undefined ? {} : { cells }),
  };
  const found = await model.ask('stripToCut', wanted, entry.cameFrom.studyId);
  if (!found.ok) return found;
  const { rungs, answer } = found.value;
  if (rungs.length < leastSettings) {
    const [leastMmPerS, mostMmPerS] = study.machine.speedRangeMmPerS;
    return refused('strip-too-narrow', { leastMmPerS, mostMmPerS });
  }
  return store.change(async (session) => {
    const known = await session.study(id);
    const before = cutBefore(id, known);
    if (before !== undefined) return done(before);
    const { batch } = study.stock;
    const request = cardRequestKnowing(
      cut,
      {
        code: await freeCode(session, ids),
        rungs,
        cellsEach: 1,
        sheet: stripSheets[wish.of],
        ...(batch === undefined ? {} : { batch }),
        ...(wish.sheetMm === undefined ? {} : { sheetMm: wish.sheetMm }),
      },
      answer,
    );
    const designed = designCard(request);
    if (!designed.ok) return designed;
    if (known === undefined) await session.insertStudy(study, study.createdAt);
    await session.insertCard(id, designed.value.card);
    return done({ ...designed.value, studyId: id });
  });
};

interface Asked {
  readonly idOrCode: string;
  readonly wish: StripWish;
  readonly id: string;
}

interface ToCut {
  readonly entry: ProvenSetting;
  /** The study that the strip will be. */
  readonly study: Study;
  readonly earlier: readonly EarlierSheet[];
}

const beginning = async (
  session: Session,
  ports: Ports,
  { idOrCode, wish, id }: Asked,
): Promise<Outcome<ToCut | { readonly cut: StripCut }>> => {
  const found = await findEntry(session, idOrCode);
  if (!found.ok) return found;
  const entry = found.value;
  const accepted = acceptMaterial(entry.holdsFor);
  if (!accepted.ok) return accepted;
  const batch = stripBatch(entry.holdsFor.batch, wish);
  if (!batch.ok) return batch;
  const before = cutBefore(id, await session.study(id));
  if (before !== undefined) return done({ cut: before });
  const machine = await machineOfEntry(session, ports, entry);
  const now = ports.clock.now();
  const study = studyFor(entry, wish, { id, now, batch: batch.value, machine });
  return done({ entry, study, earlier: await historyIn(session, historyWishOf(study)) });
};

const cutBefore = (id: string, known: StoredStudy | undefined): StripCut | undefined => {
  const [card] = known?.study.cards ?? [];
  return card === undefined ? undefined : { studyId: id, card, remarks: [] };
};

/** With fewer there is nothing to compare. */
const leastSettings = 3;

/** The machine that the setting holds for; where nobody knows that any more, the default. */
const machineOfEntry = async (
  session: Session,
  ports: Ports,
  { holdsFor }: ProvenSetting,
): Promise<WorkshopMachine> => {
  const known =
    holdsFor.machineId === undefined ? undefined : await session.machine(holdsFor.machineId);
  return known ?? defaultMachine(session, ports);
};

const studyFor = (
  entry: ProvenSetting,
  { of, thicknessReadingsMm }: StripWish,
  given: {
    readonly id: string;
    readonly now: string;
    readonly batch: string | undefined;
    readonly machine: WorkshopMachine;
  },
): Study => {
  const { nominalThicknessMm, measuredThicknessMm } = entry.holdsFor;
  const stock: Stock = {
    ...namedMaterial(entry.holdsFor),
    nominalThicknessMm,
    thicknessReadingsMm:
      thicknessReadingsMm ?? (measuredThicknessMm === undefined ? [] : [measuredThicknessMm]),
    ...(given.batch === undefined ? {} : { batch: given.batch }),
    sheet: stripSheets[of],
  };
  return {
    version: 1,
    id: given.id,
    isExample: entry.isExample,
    createdAt: given.now,
    stock,
    machineId: given.machine.id,
    machine: given.machine.machine,
    machineChanges: given.machine.changes,
    promise: entry.promise,
    aim: entry.aim,
    ask: { powerPct: entry.setting.powerPct },
    stripOf: entry.id,
    tallies: [],
    cards: [],
    events: [],
  };
};
