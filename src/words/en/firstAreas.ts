import type { AreaWords } from '../sentence.ts';
import { appWords } from './app.ts';
import { cutmodelWords } from './cutmodel.ts';
import { httpWords } from './http.ts';
import { machineWords } from './machine.ts';
import { readingWords } from './reading.ts';
import { stockWords } from './stock.ts';
import { unitWords } from './units.ts';
import { webWords } from './web.ts';

/** What the first screens may have to say: kept small, since it comes with the first view. */
export const firstAreas: readonly AreaWords[] = [
  appWords,
  cutmodelWords,
  httpWords,
  machineWords,
  readingWords,
  stockWords,
  unitWords,
  webWords,
];
