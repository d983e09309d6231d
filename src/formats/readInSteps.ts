import type { Toolpath } from '../core/filecheck/toolpath.ts';
import type { Outcome } from '../core/problem.ts';
import type { ReadingOptions } from './reading.ts';
import { toolpathReading } from './readToolpath.ts';
import { refuseDrawing } from './refuseDrawing.ts';

export interface SteppedOptions extends ReadingOptions {
  /**
   * Told after each step the share that is done, 0 to 1, never falling. Whoever wants the page to breathe answers when it
   * has; `'stop'` ends the reading for good.
   */
  readonly afterStep: (share: number) => Step | Promise<Step>;
}

type Step = 'go-on' | 'stop';

/**
 * Reads a file like `readToolpath`, in steps of some milliseconds, for a worker that shows how far it is and can be told to
 * stop. Refuses besides: `drawing-reading-stopped`.
 */
export const readInSteps = async (
  text: string,
  { afterStep, ...options }: SteppedOptions,
): Promise<Outcome<Toolpath>> => {
  const reading = toolpathReading(text, options);
  let most = 0;
  for (;;) {
    const step = reading.next();
    if (step.done === true) return step.value;
    most = Math.max(most, step.value);
    if ((await afterStep(most)) === 'stop') return refuseDrawing('drawing-reading-stopped');
  }
};
