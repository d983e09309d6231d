import type { Card } from '../../src/core/card/card.ts';
import { checkToolpath } from '../../src/core/filecheck/checkToolpath.ts';
import type { Finding, Toolpath } from '../../src/core/filecheck/toolpath.ts';
import { readToolpath } from '../../src/formats/readToolpath.ts';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { inventCards } from './inventCards.ts';
import { drawingKinds, writeAll } from './writeAll.ts';

/** What goes to the machine, examined: cards of many kinds in every format. */
export const filesPart: NightPart = {
  name: 'files',
  about: 'cards of many kinds as SVG, DXF and G-code',
  run: () => examineFiles(100, 1),
};

function* examineFiles(count: number, seed: number): Generator<Figure> {
  const cards = inventCards(count, seed);
  yield { what: 'cards drawn', value: cards.length, atLeast: count };
  const faulted: string[] = [];
  let files = 0;
  for (const card of cards) {
    const written = writeAll(card);
    for (const kind of drawingKinds) {
      const text = written[kind];
      if (text === undefined) continue;
      files += 1;
      const read = readToolpath(text);
      const bad = read.ok ? faultsOf(read.value, card) : [read.problem];
      const [first] = bad;
      if (first !== undefined)
        faulted.push(`${card.code}.${kind}: ${first.code} ${JSON.stringify(first.params)}`);
    }
  }
  yield { what: 'files written', value: files };
  yield {
    what: 'files that the own check faults',
    value: faulted.length,
    atMost: 0,
    cases: faulted.slice(0, 20),
  };
}

/** With the card and without: neither way finds anything in what was just written. */
const faultsOf = (toolpath: Toolpath, card: Card): readonly Finding[] =>
  [checkToolpath(toolpath, { card }), checkToolpath(toolpath)].flatMap(({ findings }) =>
    findings.filter(({ severity }) => severity === 'fault'),
  );
