import { refused } from '../../core/problem.ts';
import type { Printer } from '../../served/files/printer.ts';

/** A page that works alone carries no means to make PDF files: its own screens are printed by the browser. */
export const noPrinter: Printer = {
  jobSheet: () => Promise.resolve(refused('no-pdf-here')),
  pageBeside: () => Promise.resolve(refused('no-pdf-here')),
  wallList: () => Promise.resolve(refused('no-pdf-here')),
  reasoning: () => Promise.resolve(refused('no-pdf-here')),
};
