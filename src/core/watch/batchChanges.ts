import type { WatchPoint } from './watchChart.ts';

/** From one count on another batch was cut. */
export interface BatchChange {
  /** Place among the counts of the first one in the new batch. */
  readonly atPoint: number;
  /** Absent: nobody named the batch before. */
  readonly from?: string;
  readonly to: string;
}

/**
 * Where the batch changed among counts, oldest first. `kept`: the batch that the setting was proven on. A count that names no
 * batch is taken for one of the batch before; a strip in a batch of before is the reference sheet, and changes nothing. O(n).
 */
export const batchChanges = (
  points: readonly Pick<WatchPoint, 'kind' | 'batch'>[],
  kept?: string,
): readonly BatchChange[] => {
  const changes: BatchChange[] = [];
  const seen = new Set(kept === undefined ? [] : [plain(kept)]);
  let now = kept;
  points.forEach(({ kind, batch }, atPoint) => {
    if (batch === undefined || plain(batch) === '') return;
    const isKeptBack = kind === 'strip' && seen.has(plain(batch));
    const isSame = now !== undefined && plain(now) === plain(batch);
    seen.add(plain(batch));
    if (isKeptBack || isSame) return;
    // The first count of all may name the batch that was meant all along.
    if (now !== undefined || atPoint > 0)
      changes.push({ atPoint, ...(now === undefined ? {} : { from: now }), to: batch });
    now = batch;
  });
  return changes;
};

const plain = (batch: string): string => batch.trim().toLowerCase();
