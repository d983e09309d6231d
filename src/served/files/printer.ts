import type { JobSheet } from '../../core/card/jobSheet.ts';
import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { Explanation } from '../../core/explain/explanation.ts';
import type { Outcome } from '../../core/problem.ts';
import type { WallMachine } from '../../core/standing/wallList.ts';
import type { UnitPreference } from '../../core/units/unitPreference.ts';
import type { PageBeside } from '../../words/shape/pageBeside.ts';

/** Draws pages for paper (PDF); the program wires it, since printing is another layer's work. */
export interface Printer {
  readonly jobSheet: (
    sheet: JobSheet,
    /** `stock`: what is cut, as the user calls it. */
    about: { readonly stock: string; readonly units?: UnitPreference },
  ) => Promise<Outcome<Uint8Array>>;
  readonly pageBeside: (
    page: PageBeside,
    about: { readonly units: UnitPreference },
  ) => Promise<Outcome<Uint8Array>>;
  readonly wallList: (
    machines: readonly WallMachine[],
    about: { readonly units: UnitPreference },
  ) => Promise<Outcome<Uint8Array>>;
  readonly reasoning: (
    cut: CutStudy,
    explanation: Explanation,
    about: { readonly stock: string },
  ) => Promise<Outcome<Uint8Array>>;
}
