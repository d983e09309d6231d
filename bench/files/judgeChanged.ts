import { plainDialect } from '../../src/core/dialect/gcodeDialect.ts';
import type { Card } from '../../src/core/card/card.ts';
import { cardDrawing } from '../../src/core/card/cardDrawing.ts';
import { cellsInCuttingOrder } from '../../src/core/card/cuttingOrder.ts';
import { indexColours } from '../../src/core/card/indexColours.ts';
import { checkToolpath } from '../../src/core/filecheck/checkToolpath.ts';
import { gcodeRefusal } from '../../src/formats/gcode/gcodeRefusal.ts';
import { readToolpath } from '../../src/formats/readToolpath.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { changes, type Change } from './changes.ts';
import { drawnLines, isCell, type DrawnLine } from './drawnLine.ts';
import { otherTools, type OtherToolName, type Page } from './otherTools.ts';

/** One file that was changed and saved anew, and whether the check took it for what it is. */
export interface Judged {
  readonly what: string;
  readonly is: Change['is'];
  readonly right: boolean;
  /** Codes of its faults. */
  readonly faults: readonly string[];
}

/** Every change to a card, saved by every tool that can carry it, held against the card. */
export function* judgeChanged(card: Card, seed: number): Generator<Judged> {
  const drawing = cardDrawing(card);
  const colours = drawing.layers.map(({ colour }) => colour);
  const indices = indexColours(colours);
  const page: Page = {
    // Room to be moved in.
    widthMm: drawing.widthMm + 60,
    heightMm: drawing.heightMm + 60,
    indexOf: (colour) => indices[colours.indexOf(colour)] ?? 7,
  };
  const lines = drawnLines(card);
  const asProgram = inCuttingOrder(card, lines);
  const random = seededRandom(seed);
  for (const change of changes)
    for (const [name, tool] of Object.entries(otherTools)) {
      const program = isProgram(name);
      if (change.only !== undefined && (change.only === 'programs') !== program) continue;
      if (program && gcodeRefusal(drawing, plainDialect) !== undefined) continue;
      const changed = change.make(program ? asProgram : lines, random);
      if (changed === null) continue;
      const read = readToolpath(tool(changed, page));
      const faults = read.ok
        ? checkToolpath(read.value, { card })
            .findings.filter(({ severity }) => severity === 'fault')
            .map(({ code }) => code)
        : [read.problem.code];
      yield {
        what: `${card.code}: ${change.what}, ${name}`,
        is: change.is,
        right: faults.length > 0 === (change.is === 'spoilt'),
        faults: [...new Set(faults)],
      };
    }
}

const isProgram = (tool: string): boolean =>
  tool === ('gcode without comments' satisfies OtherToolName);

const inCuttingOrder = (card: Card, lines: readonly DrawnLine[]): readonly DrawnLine[] => {
  const cells = cellsInCuttingOrder(card).flatMap(({ id }) =>
    lines.filter((line) => isCell(line) && 'cell' in line.of && line.of.cell === id),
  );
  let next = -1;
  return lines.map((line) => {
    if (!isCell(line)) return line;
    next += 1;
    return cells[next] ?? line;
  });
};
