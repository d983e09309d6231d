import type { Toolpath } from '../../core/filecheck/toolpath.ts';
import { remark } from '../../core/filecheck/toolpath.ts';
import { done, type Outcome } from '../../core/problem.ts';
import type { ReadingOptions } from '../reading.ts';
import { contradictions } from './svgContradictions.ts';
import { SvgDrawing } from './svgDrawing.ts';
import { StyleSheet } from './svgStyle.ts';
import { readTree } from './svgTree.ts';
import { pageOf } from './svgViewBox.ts';

/**
 * A drawing in SVG as lines in mm, in the order of the file: what a control program would find in it. Groups are layers,
 * by title, label or id. Shapes, curves, copies (`use`), symbols, nested drawings, transforms, units and simple style
 * rules are read; hidden parts are left out and told of; text and pictures are told of. Refuses hostile files: declared
 * entities that grow, endless size, depth or copies, absurd numbers. O(signs + points).
 */
export const readSvg = (text: string, options: ReadingOptions = {}): Outcome<Toolpath> => {
  const read = readTree(text);
  if (!read.ok) return read;
  const tree = read.value;
  const page = pageOf(tree.root.attributes);
  const sheet = new StyleSheet();
  for (const css of tree.styles) sheet.add(css);
  const drawing = new SvgDrawing({ tree, sheet, page, options });
  drawing.finish();
  if (drawing.problem !== undefined) return drawing.problem;
  if (sheet.unread > 0) drawing.noticed.unread.add('style rules', sheet.unread);
  const { widthMm, heightMm, assumed } = page;
  return done({
    kind: 'svg',
    lines: drawing.lines,
    page: { widthMm, heightMm },
    travels: [],
    noticed: [
      ...(assumed ? [remark('check-units-assumed')] : []),
      ...drawing.noticed.findings(),
      ...contradictions(drawing.groups),
    ],
  });
};
