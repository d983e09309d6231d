import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import { KeptMarks } from './KeptMarks.tsx';
import { useKeptMarks } from './useKeptMarks.ts';

/** The marks that are kept of a kept setting's sheet; nothing where there are none. */
export const MarksOfEntry = ({ entry }: { readonly entry: ProvenSetting }) => {
  const kept = useKeptMarks(entry.holdsFor);
  return Object.keys(kept).length === 0 ? null : <KeptMarks kept={kept} />;
};
