import type { ProblemCode } from '../../core/problem.ts';
import type { Sentences } from '../shape/sentence.ts';
import { appWords } from './app.ts';
import { bedWords } from './bed.ts';
import { bookWords } from './book.ts';
import { cardWords } from './card.ts';
import { compareWords } from './compare.ts';
import { cutmodelWords } from './cutmodel.ts';
import { earlierWords } from './earlier.ts';
import { drawingWords, filecheckWords } from './filecheck.ts';
import { focusWords } from './focus.ts';
import { formatWords } from './formats.ts';
import { httpWords } from './http.ts';
import { kerfWords } from './kerf.ts';
import { machineTestWords } from './machineTests.ts';
import { machineWords } from './machine.ts';
import { markingWords } from './marking.ts';
import { meterWords } from './meter.ts';
import { mistakeWords } from './mistakes.ts';
import { motionWords } from './motion.ts';
import { photoWords } from './photo.ts';
import { planWords } from './plan.ts';
import { programWords } from './program.ts';
import { proofWords } from './proof.ts';
import { readingWords } from './reading.ts';
import { referenceWords } from './reference.ts';
import { standingWords } from './standing.ts';
import { stockWords } from './stock.ts';
import { storeWords } from './store.ts';
import { unitWords } from './units.ts';
import { watchWords } from './watch.ts';
import { webWords } from './web.ts';

/** Every code's sentence in English; a code that has none does not compile. A new area is one file and one line here. */
export const sentences: Sentences<ProblemCode> = {
  ...appWords,
  ...bedWords,
  ...bookWords,
  ...cardWords,
  ...compareWords,
  ...cutmodelWords,
  ...earlierWords,
  ...drawingWords,
  ...filecheckWords,
  ...focusWords,
  ...formatWords,
  ...httpWords,
  ...kerfWords,
  ...machineTestWords,
  ...machineWords,
  ...markingWords,
  ...meterWords,
  ...mistakeWords,
  ...motionWords,
  ...photoWords,
  ...planWords,
  ...programWords,
  ...proofWords,
  ...readingWords,
  ...referenceWords,
  ...standingWords,
  ...stockWords,
  ...storeWords,
  ...unitWords,
  ...watchWords,
  ...webWords,
};
