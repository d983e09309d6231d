import type { UnkeptBedTest } from '../../../core/bed/bedTest.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { cornersText as words } from '../../../words/texts.ts';
import { KeepTest } from '../../parts/earlier/KeepTest.tsx';
import { callOrThrow } from '../../state/call.ts';
import { bedTestsKey } from './useBedTests.ts';

export interface KeepCornersProps {
  /** Absent: nothing was read yet. */
  readonly test: UnkeptBedTest | undefined;
  readonly onKept: () => void;
}

/** Keeps what was read with its date. */
export const KeepCorners = ({ test, onKept }: KeepCornersProps) => (
  <KeepTest
    words={words}
    test={test}
    record={(body) => callOrThrow(pageApi.recordBedTest, { body })}
    queryKey={bedTestsKey}
    onKept={onKept}
  />
);
