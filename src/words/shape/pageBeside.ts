import type { CardDrawing } from '../../core/card/cardDrawing.ts';
import type { Problem } from '../../core/problem.ts';
import type { CautionAct } from './caution.ts';

/** What stands on the page that lies beside the machine while something is drawn or cut that is no card of a sheet. */
export interface PageBeside {
  readonly title: string;
  readonly about: string;
  /** What has to be minded before all else. */
  readonly minded: string;
  /** What a person is about to do, for its cautions. */
  readonly acts: readonly CautionAct[];
  /** What is to be said of what it is made of; absent: nothing. */
  readonly ofMaterial?: readonly Problem[];
  readonly drawing: CardDrawing;
  readonly steps: readonly string[];
  /** What is typed in. */
  readonly entries: readonly string[];
  /** What is written down beside the machine. */
  readonly noteFields: readonly string[];
  readonly remarks?: readonly Problem[];
}
