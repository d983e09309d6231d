import type { AreaWords } from '../sentence.ts';
import { bedWords } from './bed.ts';
import { bookWords } from './book.ts';
import { cardWords } from './card.ts';
import { compareWords } from './compare.ts';
import { earlierWords } from './earlier.ts';
import { drawingWords, filecheckWords } from './filecheck.ts';
import { focusWords } from './focus.ts';
import { formatWords } from './formats.ts';
import { programWords } from './program.ts';
import { mistakeWords } from './mistakes.ts';
import { motionWords } from './motion.ts';
import { meterWords } from './meter.ts';
import { planWords } from './plan.ts';
import { proofWords } from './proof.ts';
import { referenceWords } from './reference.ts';
import { standingWords } from './standing.ts';
import { storeWords } from './store.ts';
import { watchWords } from './watch.ts';

/** What only later screens, files and the program may have to say. */
export const laterAreas: readonly AreaWords[] = [
  bedWords,
  bookWords,
  cardWords,
  compareWords,
  drawingWords,
  earlierWords,
  filecheckWords,
  focusWords,
  formatWords,
  programWords,
  mistakeWords,
  motionWords,
  meterWords,
  planWords,
  proofWords,
  referenceWords,
  standingWords,
  storeWords,
  watchWords,
];
