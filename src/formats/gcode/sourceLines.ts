interface SourceLine {
  /** From 1. */
  readonly number: number;
  readonly source: string;
}

/** Lines ended in any of the three ways, one at a time. */
export function* linesOf(text: string): Generator<SourceLine, void, undefined> {
  const ending = /\r\n|\n|\r/g;
  let at = 0;
  for (let number = 1; ; number += 1) {
    const found = ending.exec(text);
    const end = found?.index ?? text.length;
    yield { number, source: text.slice(at, end) };
    if (found === null) return;
    at = ending.lastIndex;
  }
}
