import { groupOf } from './gcodeModes.ts';
import type { Position } from './gcodeProgram.ts';
import type { GcodeWord } from './gcodeWords.ts';

export const axisLetters = ['X', 'Y', 'Z'] as const;
export const arcLetters = ['I', 'J', 'K'] as const;

/** Known by name, but of no meaning to a laser without tools, or known only to the machine. */
export const passedOver = ({ letter, value }: GcodeWord): boolean =>
  letter === 'G' && [28, 30, 38.2, 41, 42, 43].includes(value);

/** Sets the zero, or chooses one that only the machine knows: what follows lies wherever that is. */
export const movesZero = ({ letter, value }: GcodeWord): boolean =>
  letter === 'G' && [10, 55, 56, 57, 58, 59, 59.1, 59.2, 59.3, 92].includes(value);

/** The words of one line, looked up by letter or group. */
export class LineWords {
  readonly #words: readonly GcodeWord[];
  readonly #values: ReadonlyMap<string, number>;

  constructor(words: readonly GcodeWord[]) {
    this.#words = words;
    this.#values = new Map(
      words
        .filter(({ letter }) => letter !== 'G' && letter !== 'M')
        .map(({ letter, value }) => [letter, value]),
    );
  }

  value(letter: string): number | undefined {
    return this.#values.get(letter);
  }

  has(letter: 'G' | 'M', value: number): boolean {
    return this.#words.some((word) => word.letter === letter && word.value === value);
  }

  hasAxes(): boolean {
    return axisLetters.some((letter) => this.#values.has(letter));
  }

  ofGroup(group: string): number | undefined {
    return this.#words.find((word) => groupOf(word) === group)?.value;
  }
}

/** A position, axis by axis. */
export const each = (of: (axis: 0 | 1 | 2) => number): Position => [of(0), of(1), of(2)];
