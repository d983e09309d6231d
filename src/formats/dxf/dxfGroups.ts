/** One record of a DXF file: what stands between one group 0 and the next. */
export interface DxfRecord {
  readonly type: string;
  /** Where it begins, from 1. */
  readonly line: number;
  readonly groups: readonly DxfGroup[];
}

/** A code and its value, each on a line of its own; the code says what the value means. */
export interface DxfGroup {
  readonly code: number;
  readonly value: string;
}

/** Takes a text in lines of code and value apart, one group at a time, without keeping any. */
export class DxfGroups {
  readonly #text: string;
  #at = 0;
  #line = 0;

  constructor(text: string) {
    this.#text = text;
  }

  /** Lines read so far. */
  get line(): number {
    return this.#line;
  }

  /** Undefined at the end; `'slip'` where a code should stand and none does. */
  next(): DxfGroup | 'slip' | undefined {
    const code = this.#nextLine()?.trim();
    const value = this.#nextLine();
    if (code === undefined || value === undefined)
      return code === undefined || code === '' ? undefined : 'slip';
    return /^-?\d{1,5}$/.test(code) ? { code: Number(code), value: value.trim() } : 'slip';
  }

  #nextLine(): string | undefined {
    if (this.#at >= this.#text.length) return undefined;
    const end = this.#text.indexOf('\n', this.#at);
    const line = this.#text.slice(this.#at, end < 0 ? this.#text.length : end);
    this.#at = end < 0 ? this.#text.length : end + 1;
    this.#line += 1;
    return line;
  }
}
