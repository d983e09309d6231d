import { fault, remark, type Finding } from '../core/filecheck/toolpath.ts';
import type { Point } from '../core/path/point.ts';
import { Unread } from './unread.ts';

/** What is found in a drawing on the way that a person should know. */
export class Noticed {
  readonly unread = new Unread();
  readonly #slips: Finding[] = [];
  #text: { readonly words: string; readonly at: Point } | undefined;
  #texts = 0;
  #hidden = 0;
  #hiddenLayer = '';
  #unseen = 0;
  #firstUnseen = 0;

  /** What cannot be read because something is wrong with it. */
  slip(what: string): void {
    if (this.#slips.length < mostSlips)
      this.#slips.push(fault('check-part-not-read', { what, count: 1 }));
  }

  /** Text that is still text; `at` in mm. */
  text(words: string, at: Point): void {
    this.#text ??= { words, at };
    this.#texts += 1;
  }

  hidden(layer: string): void {
    if (this.#hidden === 0) this.#hiddenLayer = layer;
    this.#hidden += 1;
  }

  /** Lines that cannot be seen and are cut all the same; the first of them by its place. */
  unseen(lines: number, where: number): void {
    if (this.#unseen === 0) this.#firstUnseen = where;
    this.#unseen += lines;
  }

  findings(): readonly Finding[] {
    return [
      ...this.#slips,
      ...this.#textFindings(),
      ...(this.#unseen === 0
        ? []
        : [fault('check-unseen-cut', { count: this.#unseen, where: this.#firstUnseen })]),
      ...(this.#hidden === 0
        ? []
        : [remark('check-hidden-left-out', { count: this.#hidden, layer: this.#hiddenLayer })]),
      ...this.unread.findings(),
    ];
  }

  #textFindings(): readonly Finding[] {
    if (this.#text === undefined) return [];
    const { words, at } = this.#text;
    const [xMm, yMm] = [rounded(at[0]), rounded(at[1])];
    return [fault('check-text-not-lines', { words, xMm, yMm, count: this.#texts })];
  }
}

const mostSlips = 20;

const rounded = (mm: number): number => Number(mm.toFixed(1));
