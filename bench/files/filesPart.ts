import type { Card } from '../../src/core/card/card.ts';
import { checkToolpath } from '../../src/core/filecheck/checkToolpath.ts';
import type { Finding, Toolpath } from '../../src/core/filecheck/toolpath.ts';
import { readToolpath } from '../../src/formats/readToolpath.ts';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { furthestApartMm, independentReaders } from './agreement.ts';
import { wrongWords } from './engravedWords.ts';
import { inventCards } from './inventCards.ts';
import { judgeChanged } from './judgeChanged.ts';
import { drawingKinds, writeAll } from './writeAll.ts';

/** What goes to the machine, examined: cards of many kinds in every format. */
export const filesPart: NightPart = {
  name: 'files',
  about: 'cards of many kinds as SVG, DXF and G-code, changed and saved anew',
  run: () => examineFiles({ cards: 60, changedCards: 12, seed: 1 }),
};

interface Extent {
  readonly cards: number;
  /** How many of them are changed and saved anew in every way. */
  readonly changedCards: number;
  readonly seed: number;
}

/** The examination, figure by figure. */
export function* examineFiles({ cards: count, changedCards, seed }: Extent): Generator<Figure> {
  const cards = inventCards(count, seed);
  yield { what: 'cards drawn', value: cards.length, atLeast: count };
  yield* ownFiles(cards);
  yield* changed(cards.slice(0, changedCards), seed);
}

function* ownFiles(cards: readonly Card[]): Generator<Figure> {
  const [faulted, apart, words]: [string[], string[], string[]] = [[], [], []];
  let [files, pairs, worstMm, read] = [0, 0, 0, 0];
  for (const card of cards) {
    const written = writeAll(card);
    const lines = drawingKinds.flatMap((kind) => {
      const text = written[kind];
      if (text === undefined) return [];
      files += 1;
      const own = readToolpath(text);
      const found = own.ok ? faultsOf(own.value, card) : [own.problem];
      for (const { code } of found.slice(0, 1)) faulted.push(`${card.code}.${kind}: ${code}`);
      return [{ kind, lines: independentReaders[kind](text) }];
    });
    const [reference, ...others] = lines;
    if (reference === undefined) continue;
    for (const other of others) {
      pairs += 1;
      const mm = furthestApartMm(reference.lines, other.lines);
      worstMm = Math.max(worstMm, mm);
      if (!(mm <= agreeMm)) apart.push(`${card.code}.${other.kind}: ${String(mm)} mm`);
    }
    read += card.cells.length;
    words.push(...wrongWords(card, written.svg ?? ''));
  }
  yield {
    what: 'files that the own check faults',
    value: faulted.length,
    atMost: 0,
    cases: faulted,
  };
  yield { what: 'files written', value: files };
  yield { what: 'files held against the SVG by other readers', value: pairs };
  yield {
    what: 'furthest that a corner lies apart',
    value: worstMm,
    unit: 'mm',
    atMost: agreeMm,
    cases: apart.slice(0, 10),
  };
  yield { what: 'cells whose engraved words were read', value: read };
  yield {
    what: 'words that are not their setting',
    value: words.length,
    atMost: 0,
    cases: words.slice(0, 10),
  };
}

const agreeMm = 0.02;

/** With the card and without: neither way finds anything in what was just written. */
const faultsOf = (toolpath: Toolpath, card: Card): readonly Finding[] =>
  [checkToolpath(toolpath, { card }), checkToolpath(toolpath)].flatMap(({ findings }) =>
    findings.filter(({ severity }) => severity === 'fault'),
  );

function* changed(cards: readonly Card[], seed: number): Generator<Figure> {
  const judged = cards.flatMap((card, i) => [...judgeChanged(card, seed + i)]);
  for (const is of ['harmless', 'spoilt'] as const) {
    const these = judged.filter((one) => one.is === is);
    const wrong = these.filter(({ right }) => !right);
    yield { what: `${is} files`, value: these.length };
    yield {
      what: is === 'harmless' ? 'of them faulted' : 'of them let pass',
      value: wrong.length,
      atMost: 0,
      cases: wrong.slice(0, 20).map(({ what, faults }) => `${what}: ${faults.join(' ')}`),
    };
  }
}
