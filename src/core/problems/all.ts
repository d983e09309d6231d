import type { appProblems } from './app.ts';
import type { bedProblems } from './bed.ts';
import type { bookProblems } from './book.ts';
import type { cardProblems } from './card.ts';
import type { cliProblems } from './cli.ts';
import type { compareReasonProblems, compareRemarkProblems } from './compare.ts';
import type {
  reasonProblems,
  warningProblems,
  nextCardProblems,
  mistakeProblems,
} from './cutmodel.ts';
import type { drawingProblems } from './drawings.ts';
import type { earlierProblems, changedProblems } from './earlier.ts';
import type { filecheckProblems } from './filecheck.ts';
import type { formatProblems } from './files.ts';
import type { firingProblems } from './firing.ts';
import type { focusProblems } from './focus.ts';
import type { hostProblems } from './host.ts';
import type { httpProblems } from './http.ts';
import type { kerfReasonProblems, kerfRemarkProblems } from './kerf.ts';
import type { machineProblems } from './machine.ts';
import type { machineTestProblems } from './machineTests.ts';
import type { markingProblems } from './marking.ts';
import type { meterProblems } from './meter.ts';
import type { meterCompareProblems } from './meterings.ts';
import type { motionProblems, timeProblems } from './motion.ts';
import type { photoProblems } from './photo.ts';
import type { planProblems } from './plan.ts';
import type { drawingRemarkProblems, proofProblems } from './proof.ts';
import type { readingProblems } from './reading.ts';
import type { referenceProblems } from './reference.ts';
import type { standingProblems } from './standing.ts';
import type { stockProblems } from './stock.ts';
import type { storeProblems } from './store.ts';
import type { unitProblems } from './units.ts';
import type { watchProblems } from './watch.ts';
import type { webProblems } from './web.ts';

/** Every code that may be raised anywhere, with what it carries. A new area is one file and one line here. */
export type AllProblems = typeof appProblems &
  typeof bedProblems &
  typeof bookProblems &
  typeof cardProblems &
  typeof cliProblems &
  typeof compareReasonProblems &
  typeof compareRemarkProblems &
  typeof mistakeProblems &
  typeof nextCardProblems &
  typeof reasonProblems &
  typeof warningProblems &
  typeof drawingProblems &
  typeof changedProblems &
  typeof earlierProblems &
  typeof filecheckProblems &
  typeof formatProblems &
  typeof firingProblems &
  typeof focusProblems &
  typeof hostProblems &
  typeof httpProblems &
  typeof kerfReasonProblems &
  typeof kerfRemarkProblems &
  typeof machineProblems &
  typeof machineTestProblems &
  typeof markingProblems &
  typeof meterProblems &
  typeof meterCompareProblems &
  typeof motionProblems &
  typeof timeProblems &
  typeof photoProblems &
  typeof planProblems &
  typeof drawingRemarkProblems &
  typeof proofProblems &
  typeof readingProblems &
  typeof referenceProblems &
  typeof standingProblems &
  typeof stockProblems &
  typeof storeProblems &
  typeof unitProblems &
  typeof watchProblems &
  typeof webProblems;
