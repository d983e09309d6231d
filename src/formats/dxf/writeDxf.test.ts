import { parseDxf } from '../../../test/fixtures/parseDxf.ts';
import { describe, expect, it } from 'vitest';

import { demoRequest } from '../../../test/fixtures/cardRequest.ts';
import { cardDrawing } from '../../core/card/cardDrawing.ts';
import { designCard } from '../../core/card/designCard.ts';
import { rungColours } from '../../core/card/rungColours.ts';
import { isClosed } from '../../core/path/polyline.ts';
import { indexColours } from '../../core/card/indexColours.ts';
import { readToolpath } from '../readToolpath.ts';
import { writeDxf } from './writeDxf.ts';

const drawing = (() => {
  const outcome = designCard(demoRequest);
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return cardDrawing(outcome.value.card);
})();

describe('a card as DXF, read by another library', () => {
  const read = parseDxf(writeDxf(drawing));

  it('is in mm and has a layer a rung, in the order of cutting', () => {
    expect(read.header?.['$INSUNITS']).toBe(4);
    const order = [...new Set(read.entities.map((entity) => entity['layer']))];
    expect(order).toEqual(drawing.layers.map((layer) => layer.name));
    expect(Object.keys(read.tables?.layer?.layers ?? {})).toEqual(expect.arrayContaining(order));
  });

  it('has every line where it was drawn, closed where it was closed', () => {
    const lines = drawing.layers.flatMap((layer) => layer.polylines);
    expect(read.entities).toHaveLength(lines.length);
    lines.forEach((line, i) => {
      const entity = read.entities[i];
      const points = isClosed(line) ? line.slice(0, -1) : line;
      expect(entity).toMatchObject({
        type: 'LWPOLYLINE',
        vertices: points.map(([x, y]) => ({ x: Number(x.toFixed(4)), y: Number(y.toFixed(4)) })),
      });
      expect(entity?.['shape'] ?? false).toBe(isClosed(line));
    });
  });

  it('has its notes as text above the drawing, in a frozen layer of their own', () => {
    const note = `Never leave the machine while it runs, not even for a moment. ${'Stay. '.repeat(30)}`;
    const text = writeDxf(drawing, [note, 'µ – 2']);
    const noted = parseDxf(text);
    const texts = noted.entities.filter(({ type }) => type === 'TEXT');
    expect(texts.map((entity) => String(entity['text'])).join(' ')).toBe(`${note.trim()} µ – 2`);
    for (const entity of texts) expect(entity['layer']).toBe('cautions_not_cut');
    expect(noted.tables?.layer?.layers['cautions_not_cut']).toMatchObject({ frozen: true });
    expect(noted.entities.filter(({ type }) => type === 'LWPOLYLINE')).toEqual(
      read.entities.map((entity): unknown => expect.objectContaining({ layer: entity['layer'] })),
    );
    const own = readToolpath(text);
    expect(own.ok && own.value.noticed).toEqual([]);
  });

  it('is the same text every time', () => {
    expect(writeDxf(drawing)).toBe(writeDxf(drawing));
  });
});

describe('the index of colours', () => {
  it('differs where colours differ, and is shared where they are equal', () => {
    const colours = rungColours(20);
    expect(new Set(indexColours(colours)).size).toBe(20);
    expect(indexColours(['#c43f3e', '#00aac8', '#c43f3e'])).toEqual([
      indexColours(['#c43f3e'])[0],
      indexColours(['#00aac8'])[0],
      indexColours(['#c43f3e'])[0],
    ]);
  });

  it('finds the pure colours (10 red, 50 yellow, 90 green, 130 cyan, 170 blue, 210 magenta; from memory)', () => {
    const pure = ['#ff0000', '#ffff00', '#00ff00', '#00ffff', '#0000ff', '#ff00ff'];
    expect(indexColours(pure)).toEqual([10, 50, 90, 130, 170, 210]);
  });
});
