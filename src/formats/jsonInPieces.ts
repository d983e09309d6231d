/** The same text as `JSON.stringify` makes of it, each element of its lists when it is asked for. No list has gaps in it. */
export function* jsonInPieces(whole: object): Generator<string> {
  let before = '{';
  for (const [key, value] of Object.entries(whole) as [string, unknown][]) {
    if (value === undefined) continue;
    yield `${before}${JSON.stringify(key)}:`;
    if (Array.isArray(value)) yield* listInPieces(value);
    else yield JSON.stringify(value);
    before = ',';
  }
  yield before === '{' ? '{}' : '}';
}

function* listInPieces(list: readonly unknown[]): Generator<string> {
  let before = '[';
  for (const element of list) {
    yield `${before}${JSON.stringify(element)}`;
    before = ',';
  }
  yield before === '[' ? '[]' : ']';
}
