import type { Card } from '../../core/card/card.ts';
import { cardDrawing, type CardDrawing, type DrawnLayer } from '../../core/card/cardDrawing.ts';
import type { DrawnPart } from '../../core/card/cardParts.ts';
import { cellWords } from '../../core/card/settingWords.ts';
import type { Air } from '../../core/machine/air.ts';
import type { GcodeDialect } from '../../core/dialect/gcodeDialect.ts';
import type { Setting } from '../../core/machine/setting.ts';
import type { Point } from '../../core/path/point.ts';
import type { Polyline } from '../../core/path/polyline.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { comment, comments } from './gcodeComments.ts';
import { gcodeRefusal } from './gcodeRefusal.ts';

const figure = (value: number): string => String(Number(value.toFixed(3)));

/**
 * A card as G-code (RS-274, mm, absolute, zero at its lower left corner): every cell with its own speed and power, in
 * the card's order, mixed where the card says so. The beam is off in every travel; it is switched on with S0 and gets
 * its power with the first move, so that it never burns on the spot. Passes follow one another on each line.
 * `notes` (cautions, say) stand as comments at the top. Refuses what {@link gcodeRefusal} refuses.
 */
export const writeGcode = (
  card: Card,
  dialect: GcodeDialect,
  notes: readonly string[] = [],
): Outcome<string> => {
  const drawing = cardDrawing(card);
  const sections = cuttingOrder(card, drawing);
  return program({ title: `card ${card.code}`, drawing, sections }, dialect, notes);
};

/** Any drawing in the same way, layer by layer; its title has plain signs. Refuses like {@link writeGcode}. */
export const writeDrawingGcode = (
  { title, drawing }: { readonly title: string; readonly drawing: CardDrawing },
  dialect: GcodeDialect,
  notes: readonly string[] = [],
): Outcome<string> => program({ title, drawing, sections: inLayers(drawing) }, dialect, notes);

interface Task {
  readonly title: string;
  readonly drawing: CardDrawing;
  readonly sections: readonly Section[];
}

const program = (
  { title, drawing, sections }: Task,
  dialect: GcodeDialect,
  notes: readonly string[],
): Outcome<string> => {
  const problem = gcodeRefusal(drawing, dialect);
  if (problem !== undefined) return { ok: false, problem };
  const { widthMm, heightMm } = drawing;
  const lines = [
    comment(`Throughcut ${title}, ${figure(widthMm)} x ${figure(heightMm)} mm`),
    comment('zero is the lower left corner'),
    comment(`S${figure(dialect.sAtFullPower)} is 100 pct`),
    ...notes.flatMap(comments),
    ...dialect.opening,
    'M5',
    'G17 G21 G90 G94',
    ...sections.flatMap((section) => sectionLines(section, dialect)),
    'M5 S0',
    'M9',
    ...dialect.closing,
  ];
  return done(`${lines.join('\n')}\n`);
};

/** Lines that are cut at one setting without anything between. */
interface Section {
  readonly name: string;
  readonly setting: Setting;
  readonly parts: readonly DrawnPart[];
}

const inLayers = (drawing: CardDrawing): readonly Section[] =>
  drawing.layers.flatMap((layer) => sectionOf(layer, layer.parts));

const cuttingOrder = (card: Card, drawing: CardDrawing): readonly Section[] => {
  const sections = inLayers(drawing);
  if (card.order !== 'free') return sections;
  const rungs = drawing.layers.filter((layer) => layer.kind === 'rung');
  const cells = card.cells.flatMap((cell) => {
    const layer = rungs.find((drawn) => drawn.rung === cell.rung);
    const parts = layer?.parts.filter(({ of }) => of.what === 'cell' && of.cell === cell.id);
    return layer === undefined || parts === undefined ? [] : sectionOf(layer, parts);
  });
  const before = drawing.layers.filter((layer) => layer.kind === 'marks');
  const after = drawing.layers.filter(({ kind }) => kind === 'window' || kind === 'outline');
  const whole = (layer: DrawnLayer): readonly Section[] => sectionOf(layer, layer.parts);
  return [...before.flatMap(whole), ...cells, ...after.flatMap(whole)];
};

const sectionOf = (layer: DrawnLayer, parts: readonly DrawnPart[]): readonly Section[] =>
  layer.setting === undefined ? [] : [{ name: layer.name, setting: layer.setting, parts }];

const sectionLines = (section: Section, dialect: GcodeDialect): readonly string[] => [
  comment(section.name),
  ...airLines(section.setting.air, dialect),
  ...section.parts.flatMap((part) => [
    ...('cell' in part.of && part.of.what === 'cell'
      ? [comment(`${part.of.cell} ${cellWords(section.setting)}`)]
      : []),
    ...part.polylines.flatMap((line) => lineLines(line, section.setting, dialect)),
  ]),
];

/** Nothing is said where nobody knows of the air: then it is on the valve or knob as it stands. */
const airLines = (air: Air | undefined, { airOn }: GcodeDialect): readonly string[] =>
  air === undefined ? [] : [air === 'off' ? 'M9' : airOn];

const lineLines = (line: Polyline, setting: Setting, dialect: GcodeDialect): readonly string[] => {
  const [first, ...rest] = line;
  if (first === undefined) return [];
  const feed = `F${figure(setting.speedMmPerS * 60)}`;
  const power = `S${figure((setting.powerPct / 100) * dialect.sAtFullPower)}`;
  const on = dialect.power === 'constant' ? 'M3' : 'M4';
  const loops = rest.at(-1)?.[0] === first[0] && rest.at(-1)?.[1] === first[1];
  const again = loops ? rest : [...rest.slice(0, -1).reverse(), first];
  const passes = Array.from({ length: setting.passes }, (_, pass) =>
    pass % 2 === 0 || loops ? rest : again,
  ).flat();
  return [
    `G0 ${xy(first)}`,
    `${on} S0`,
    ...passes.map((point, i) =>
      i === 0 ? `G1 ${xy(point)} ${feed} ${power}` : `X${figure(point[0])} Y${figure(point[1])}`,
    ),
    'M5 S0',
  ];
};

const xy = ([x, y]: Point): string => `X${figure(x)} Y${figure(y)}`;
