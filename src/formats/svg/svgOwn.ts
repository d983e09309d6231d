import { parseLayerName } from '../../core/card/settingWords.ts';
import type { PathLine } from '../../core/filecheck/toolpath.ts';
import { unchanged, type Matrix } from '../../core/path/matrix.ts';
import type { Style, StyleSheet } from './svgStyle.ts';
import { readTransform } from './svgTransform.ts';
import type { SvgNode } from './svgTree.ts';

/** What an element says by itself. */
export interface Own {
  /** Nothing that holds for what is in it. */
  readonly plain: boolean;
  readonly style: Style;
  readonly matrix: Matrix;
  /** A transform that cannot be read. */
  readonly slip?: string;
  /** As a group: what its name spells, or the name. */
  readonly layer: Pick<PathLine, 'layer' | 'spelt'>;
  /** As a text: its words. */
  readonly words: string;
}

/** Works out what elements say by themselves, once for each, however often it is copied. */
export class Owns {
  readonly #known = new Map<SvgNode, Own>();
  readonly #sheet: StyleSheet;

  constructor(sheet: StyleSheet) {
    this.#sheet = sheet;
  }

  of(node: SvgNode): Own {
    const known = this.#known.get(node);
    if (known !== undefined) return known;
    const style = this.#sheet.styleOf(node.name, node.attributes);
    const said = style.transform?.replaceAll(/px|deg/g, '') ?? node.attributes['transform'];
    const matrix = said === undefined || said === 'none' ? unchanged : readTransform(said);
    const layer: Own['layer'] = node.name === 'g' ? layerOf(node) : {};
    const own = {
      plain: Object.keys(style).length === 0 && matrix === unchanged && layer.layer === undefined,
      style,
      matrix: matrix ?? unchanged,
      ...(matrix === undefined ? { slip: `transform ${(said ?? '').slice(0, 40)}` } : {}),
      layer,
      words: node.name === 'text' ? wordsOf(node).replaceAll(/\s+/g, ' ').trim().slice(0, 40) : '',
    };
    this.#known.set(node, own);
    return own;
  }
}

/** Titles, labels and ids: what control programs may show as the name of a layer. */
export const namesOf = ({ title, label, attributes }: SvgNode): readonly string[] =>
  [title, label, attributes['id']].filter((name) => name !== undefined && name !== '').map(String);

const layerOf = (group: SvgNode): Own['layer'] => {
  const names = namesOf(group);
  for (const layer of names) {
    const spelt = parseLayerName(layer);
    if (spelt !== undefined) return { layer, spelt };
  }
  return names[0] === undefined ? {} : { layer: names[0] };
};

const wordsOf = (node: SvgNode): string =>
  [
    node.words ?? '',
    ...node.children.map((child) => (child.name === 'title' ? '' : wordsOf(child))),
  ].join(' ');
