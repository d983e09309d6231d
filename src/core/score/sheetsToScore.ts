import type { ProvenSetting } from '../book/provenSetting.ts';
import { shareAllowedToFail } from '../standing/countedOrders.ts';
import { ordersWith } from '../standing/ordersWith.ts';
import { stockThicknessMm } from '../stock/stockThickness.ts';
import type { RecordedTally, SavedStudy } from '../study/study.ts';

/** One sheet, or one order, that was counted and of which something had been promised before it was cut. */
export interface ScoredSheet {
  readonly material: string;
  readonly thicknessMm: number;
  readonly machine: string;
  readonly promisedOutOf100: number;
  /** What was foretold on average, of 100 sound parts. */
  readonly foretoldOutOf100: number;
  /** Sound parts: those lost to a flaw say nothing of the setting. */
  readonly parts: number;
  readonly out: number;
}

/** What a workshop has kept, as far as promises are in it. */
export interface CountsKept {
  readonly machines: readonly {
    readonly id: string;
    readonly machine: { readonly name?: string };
  }[];
  readonly studies: readonly SavedStudy[];
  readonly book: readonly ProvenSetting[];
  /** Of kept settings whose sheet is gone. */
  readonly tallies: readonly RecordedTally[];
}

/**
 * The counts that can be held against what was promised: sheets of an order, each against what was said of it before it was
 * cut, and orders cut with a kept setting, against its promise for their own part. Others were promised nothing. The invented
 * example is no one's count. O(counts).
 */
export const sheetsToScore = ({
  machines,
  studies,
  book,
  tallies: loose,
}: CountsKept): readonly ScoredSheet[] => {
  const entries = new Map(book.map((entry) => [entry.id, entry]));
  const machineName = (id: string): string =>
    machines.find((one) => one.id === id)?.machine.name ?? id;
  const ofStudies = studies
    .filter(({ isExample }) => !isExample)
    .flatMap((study) =>
      study.tallies.flatMap((tally) => {
        const promised = promisedOf(tally, entries);
        if (promised === undefined) return [];
        const material = study.stock.material.trim().toLowerCase();
        const thicknessMm = stockThicknessMm(study.stock);
        return [{ material, thicknessMm, machine: machineName(study.machineId), ...promised }];
      }),
    );
  const ofLoose = loose.flatMap((tally) => {
    const entry = entries.get(tally.provenSettingId ?? '');
    const promised = promisedOf(tally, entries);
    if (entry === undefined || entry.isExample || promised === undefined) return [];
    const { material, nominalThicknessMm, measuredThicknessMm, machineId } = entry.holdsFor;
    return [
      {
        material: material.trim().toLowerCase(),
        thicknessMm: measuredThicknessMm ?? nominalThicknessMm,
        machine: machineName(machineId ?? ''),
        ...promised,
      },
    ];
  });
  return [...ofStudies, ...ofLoose];
};

type Promised = Pick<ScoredSheet, 'promisedOutOf100' | 'foretoldOutOf100' | 'parts' | 'out'>;

const promisedOf = (
  tally: RecordedTally,
  entries: ReadonlyMap<string, ProvenSetting>,
): Promised | undefined => {
  const { foretold, provenSettingId = '', out, hangs, stays, partLengthMm } = tally;
  const parts = out + hangs + stays;
  if (parts === 0) return undefined;
  if (foretold !== undefined) {
    const { promisedOutOf100, outOf100 } = foretold;
    return { promisedOutOf100, foretoldOutOf100: outOf100, parts, out };
  }
  const entry = entries.get(provenSettingId);
  if (entry === undefined || ordersWith(entry.setting, [tally]).length === 0) return undefined;
  const { promise, outOf100Mean } = entry;
  const share = (outOf100: number): number =>
    100 * (1 - shareAllowedToFail({ ...promise, outOf100 }, partLengthMm));
  return {
    promisedOutOf100: share(promise.outOf100),
    foretoldOutOf100: share(outOf100Mean),
    parts,
    out,
  };
};
