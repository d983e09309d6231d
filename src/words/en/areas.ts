import type { AreaWords } from '../sentence.ts';
import { appWords } from './app.ts';
import { bedWords } from './bed.ts';
import { bookWords } from './book.ts';
import { cardWords } from './card.ts';
import { cutmodelWords } from './cutmodel.ts';
import { drawingWords, filecheckWords } from './filecheck.ts';
import { formatWords } from './formats.ts';
import { httpWords } from './http.ts';
import { programWords } from './program.ts';
import { machineWords } from './machine.ts';
import { motionWords } from './motion.ts';
import { meterWords } from './meter.ts';
import { proofWords } from './proof.ts';
import { readingWords } from './reading.ts';
import { referenceWords } from './reference.ts';
import { stockWords } from './stock.ts';
import { storeWords } from './store.ts';
import { unitWords } from './units.ts';
import { webWords } from './web.ts';

/** Every area's sentences in English. A new area is one file and one line here. No code may stand in two areas. */
export const areas: readonly AreaWords[] = [
  appWords,
  bedWords,
  bookWords,
  cardWords,
  cutmodelWords,
  drawingWords,
  filecheckWords,
  formatWords,
  httpWords,
  programWords,
  proofWords,
  readingWords,
  stockWords,
  storeWords,
  referenceWords,
  machineWords,
  motionWords,
  meterWords,
  unitWords,
  webWords,
];
