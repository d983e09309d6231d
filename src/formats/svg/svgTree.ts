import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { readingLimits } from '../readingLimits.ts';
import { refuseUnreadable } from '../refuseDrawing.ts';
import { ownEntities } from './ownEntities.ts';

/** An element of a drawing. Elements that are none of SVG's (what drawing programs keep for themselves) are left out. */
export interface SvgNode {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: SvgNode[];
  /** What a copy names, whatever the prefix of its `href`. */
  readonly href: string | undefined;
  /** A name that a drawing program shows in its list of layers. */
  readonly label: string | undefined;
  /** Of its `<title>`. */
  title?: string;
  /** Its own words: of texts and style sheets only. */
  words?: string;
}

export interface SvgTree {
  readonly root: SvgNode;
  /** For copies; the first of its name, as browsers take it. */
  readonly byId: ReadonlyMap<string, SvgNode>;
  /** The texts of all style sheets, in order. */
  readonly styles: readonly string[];
  readonly elements: number;
}

/** So much is read before it is asked whether the rest is still wanted. */
const chunk = 65_536;

/**
 * The text of an SVG as a tree. Refuses what is no SVG, what declares more
 * than a few short words of its own, and what has more elements or deeper ones than any drawing. O(signs).
 */
export const readTree = (text: string): Outcome<SvgTree> => {
  const builder = new Builder();
  const parser = new SaxesParser();
  parser.on('doctype', (doctype) => {
    const entities = ownEntities(doctype, text);
    if (entities === undefined) builder.problem ??= refused('drawing-declares-entities');
    else Object.assign(parser.ENTITIES, Object.fromEntries(entities));
  });
  parser.on('opentag', (tag) => builder.open(tag));
  parser.on('closetag', () => builder.close());
  parser.on('text', (words) => builder.text(words));
  parser.on('cdata', (words) => builder.text(words));
  try {
    for (let i = 0; i < text.length && builder.problem === undefined; i += chunk)
      parser.write(text.slice(i, i + chunk));
    if (builder.problem === undefined) parser.close();
  } catch (error) {
    const detail = error instanceof Error ? error.message : 'no reason given';
    builder.problem ??= unreadable(detail.slice(0, 200).replace(/\.$/, ''));
  }
  return builder.problem ?? builder.tree();
};

const unreadable = (detail: string): Outcome<never> => refuseUnreadable('SVG', detail);

/** Elements whose words are wanted. */
const wordy: ReadonlySet<string> = new Set(['text', 'tspan', 'textPath', 'a', 'title', 'style']);

class Builder {
  problem: Outcome<never> | undefined;
  readonly #open: (SvgNode | undefined)[] = [];
  readonly #byId = new Map<string, SvgNode>();
  readonly #styles: string[] = [];
  #root: SvgNode | undefined;
  #elements = 0;
  /** How SVG's own elements are prefixed: `svg:` in some files. */
  #prefix = '';

  open({ name, attributes }: SaxesTagPlain): void {
    if (this.problem !== undefined) return;
    this.#elements += 1;
    if (this.#elements > readingLimits.parts)
      this.problem = refused('drawing-too-many-parts', { most: readingLimits.parts });
    if (this.#open.length >= readingLimits.depth)
      this.problem = unreadable('groups within groups without end');
    if (this.#root === undefined) this.#begin(name);
    const node = this.#nodeOf(name, attributes);
    const parent = this.#open.at(-1);
    if (node !== undefined && parent !== undefined) parent.children.push(node);
    if (node !== undefined) this.#root ??= node;
    this.#open.push(node);
  }

  #begin(name: string): void {
    const colon = name.indexOf(':');
    this.#prefix = name.slice(0, colon + 1);
    if (name.slice(colon + 1) !== 'svg')
      this.problem ??= unreadable(`begins with <${name.slice(0, 40)}>`);
  }

  /** Undefined for what is none of SVG's, and for all within it. */
  #nodeOf(name: string, attributes: SvgNode['attributes']): SvgNode | undefined {
    const within = this.#open.length > 0 && this.#open.at(-1) === undefined;
    const prefix = name.slice(0, name.indexOf(':') + 1);
    if (within || prefix !== this.#prefix) return undefined;
    const node: SvgNode = {
      name: name.slice(prefix.length),
      attributes,
      children: [],
      href: attributes['href'] ?? prefixed(attributes, ':href'),
      label: attributes['label'] ?? prefixed(attributes, ':label'),
    };
    const id = attributes['id'];
    if (id !== undefined && !this.#byId.has(id)) this.#byId.set(id, node);
    return node;
  }

  text(words: string): void {
    const node = this.#open.at(-1);
    if (node !== undefined && wordy.has(node.name)) node.words = (node.words ?? '') + words;
  }

  close(): void {
    const node = this.#open.pop();
    const parent = this.#open.at(-1);
    if (node?.name === 'style') this.#styles.push(node.words ?? '');
    if (node?.name === 'title' && parent !== undefined) parent.title ??= (node.words ?? '').trim();
  }

  tree(): Outcome<SvgTree> {
    return this.#root === undefined
      ? unreadable('no svg element')
      : done({
          root: this.#root,
          byId: this.#byId,
          styles: this.#styles,
          elements: this.#elements,
        });
  }
}

const prefixed = (attributes: SvgNode['attributes'], ending: string): string | undefined => {
  for (const key in attributes) if (key.endsWith(ending)) return attributes[key];
  return undefined;
};
