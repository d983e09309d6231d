import { parseLayerName } from '../../core/card/settingWords.ts';
import type { PathLine } from '../../core/filecheck/toolpath.ts';
import type { GcodeProgram } from './gcodeProgram.ts';

/** What a line of the program is called from here on. */
type Called = Pick<PathLine, 'layer' | 'spelt' | 'cell'>;

/**
 * The names that comments of our own give: `(A 14.0mmps 30pct corner30)` begins a section, `(A1 14 mm/s 30%)` a cell in it.
 * Looked up in O(log names).
 */
export class GcodeNames {
  readonly #lines: number[] = [];
  readonly #called: Called[] = [];

  constructor({ comments }: GcodeProgram) {
    let section: Called = {};
    for (const { line, text } of comments) {
      const spelt = parseLayerName(text);
      const cell = spelt === undefined ? /^([A-Z]{1,2}\d{1,3}) (\d.*)$/.exec(text) : null;
      if (spelt === undefined && cell === null) continue;
      if (spelt !== undefined) section = { layer: text, spelt };
      this.#lines.push(line);
      this.#called.push(
        cell === null ? section : { ...section, cell: { id: cell[1] ?? '', words: cell[2] ?? '' } },
      );
    }
  }

  at(line: number): Called {
    return this.#called[this.#upTo(line) - 1] ?? {};
  }

  /** Whether a name begins after one line, up to another. */
  beginsBetween(after: number, upTo: number): boolean {
    return this.#upTo(upTo) > this.#upTo(after);
  }

  /** How many names stand up to a line, that one included. */
  #upTo(line: number): number {
    let [low, high] = [0, this.#lines.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#lines[middle] ?? Infinity) <= line) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
