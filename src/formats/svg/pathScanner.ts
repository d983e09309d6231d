/** Takes path data apart, sign by sign, without keeping anything. */
export class PathScanner {
  readonly #text: string;
  #at = 0;

  constructor(text: string) {
    this.#text = text;
  }

  atEnd(): boolean {
    this.#skip(blanks);
    return this.#at >= this.#text.length;
  }

  letter(): string | undefined {
    const sign = this.#text.charAt(this.#at);
    if (!/[a-z]/i.test(sign)) return undefined;
    this.#at += 1;
    return sign;
  }

  /** So many figures, parted by white space, a comma or nothing where that is clear. */
  figures(count: number, ofArc: boolean): readonly number[] | undefined {
    const found: number[] = [];
    for (let i = 0; i < count; i += 1) {
      this.#skip(i === 0 ? blanks : separator);
      const isFlag = ofArc && (i === 3 || i === 4);
      const start = this.#at;
      if (!this.#skip(isFlag ? flag : figure)) return undefined;
      found.push(Number(this.#text.slice(start, this.#at)));
    }
    return found;
  }

  /** Whether another set of figures follows without a letter. */
  goesOn(): boolean {
    const before = this.#at;
    this.#skip(separator);
    const sign = this.#text.charCodeAt(this.#at);
    // Digits, sign or point.
    if ((sign >= 48 && sign <= 57) || sign === 43 || sign === 45 || sign === 46) return true;
    this.#at = before;
    return false;
  }

  slip(): string {
    return this.#text.slice(Math.max(0, this.#at - 5), this.#at + 15).trim();
  }

  /** Steps over what the pattern finds here; says whether it was anything. */
  #skip(pattern: RegExp): boolean {
    pattern.lastIndex = this.#at;
    if (!pattern.test(this.#text)) return false;
    this.#at = pattern.lastIndex;
    return true;
  }
}

const blanks = /[ \t\r\n\f]*/y;
const separator = /[ \t\r\n\f]*,?[ \t\r\n\f]*/y;
const figure = /[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/iy;
const flag = /[01]/y;
