import type { Fault } from './fault.ts';
import { fullDisks } from './fullDisks.ts';
import { hugeFiles } from './hugeFiles.ts';
import { noPlaces } from './noPlaces.ts';
import { oddContents } from './oddContents.ts';
import { oddTimes } from './oddTimes.ts';

/** Every fault that has been thought of, by subject. One more is a value in the file of its subject. */
export const faults: readonly Fault[] = [
  ...fullDisks,
  ...noPlaces,
  ...oddTimes,
  ...oddContents,
  ...hugeFiles,
];
