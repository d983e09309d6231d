import { keyOf, selectorOf, selects, specificity, type Selector } from './svgSelector.ts';

/** The properties that tell whether and in what colour a part is seen. */
const properties = [
  'display',
  'visibility',
  'opacity',
  'stroke',
  'stroke-opacity',
  'stroke-width',
  'stroke-dasharray',
  'fill',
  'fill-opacity',
  'color',
  'clip-path',
  'mask',
  'transform',
  'transform-origin',
  'font-size',
] as const;
export type StyleProperty = (typeof properties)[number];

export type Style = Readonly<Partial<Record<StyleProperty, string>>>;

const isKnown = (name: string): name is StyleProperty => properties.some((each) => each === name);

interface Declaration {
  readonly property: StyleProperty;
  readonly value: string;
  readonly important: boolean;
}

/** What stands within the braces of a rule or in a `style` attribute, as far as it matters here. O(signs). */
const declarationsIn = (text: string): readonly Declaration[] =>
  text.split(';').flatMap((part): readonly Declaration[] => {
    const colon = part.indexOf(':');
    const property = part.slice(0, Math.max(0, colon)).trim().toLowerCase();
    if (!isKnown(property)) return [];
    const said = part.slice(colon + 1).trim();
    const important = /!\s*important$/i.test(said.slice(-20));
    const value = important ? said.slice(0, said.lastIndexOf('!')).trim() : said;
    return [{ property, value, important }];
  });

interface Rule extends Declaration {
  readonly selector: Selector;
  /** Ids count more than classes, classes more than names, later more than earlier. */
  readonly weight: number;
}

/** Rules that must be tried one after the other on each element; drawings have a dozen. */
const mostCompound = 200;

/** No drawing has more; the rest is counted as not read. */
const mostRules = 20_000;

/**
 * The rules of a drawing's `<style>` elements, as far as they are simple: by name, class and id of the element itself.
 * Those with anything around the element (`g > path`), with states or conditions are counted as not read.
 */
export class StyleSheet {
  /** Rules by the one thing that they ask for; of two for the same property the weightier stays. */
  readonly #simple = new Map<string, Map<StyleProperty, Rule>>();
  readonly #compound: Rule[] = [];
  #unread = 0;
  #order = 0;

  /** Rules left out that would have said whether or in what colour a part is seen. */
  get unread(): number {
    return this.#unread;
  }

  /** O(signs): nothing is looked at twice, however the text is broken. */
  add(css: string): void {
    const bare = withoutComments(css);
    let at = 0;
    for (let open = bare.indexOf('{'); open >= 0;) {
      // `@import …;` and its like end without a block.
      const semicolon = bare.slice(at, open).lastIndexOf(';');
      const head = bare.slice(semicolon < 0 ? at : at + semicolon + 1, open).trim();
      const conditional = head.startsWith('@');
      const end = conditional ? endOfBlock(bare, open) : bare.indexOf('}', open);
      const inside = bare.slice(open + 1, end < 0 ? bare.length : end);
      if (!conditional) this.#addRule(head, declarationsIn(inside));
      else if (properties.some((name) => inside.includes(name))) this.#unread += 1;
      if (end < 0) return;
      at = end + 1;
      open = bare.indexOf('{', at);
    }
  }

  #addRule(head: string, declarations: readonly Declaration[]): void {
    if (declarations.length === 0) return;
    if (this.#order > mostRules) {
      this.#unread += 1;
      return;
    }
    for (const text of head.split(',')) {
      const selector = selectorOf(text.trim());
      if (selector === undefined) this.#unread += 1;
      else for (const declaration of declarations) this.#put(selector, declaration);
    }
  }

  #put(selector: Selector, declaration: Declaration): void {
    this.#order += 1;
    const weight = (declaration.important ? 1e15 : 0) + specificity(selector) * 1e8 + this.#order;
    const rule = { ...declaration, selector, weight };
    const key = keyOf(selector);
    if (key === undefined) {
      if (this.#compound.length < mostCompound) this.#compound.push(rule);
      else this.#unread += 1;
      return;
    }
    const rules = this.#simple.get(key) ?? new Map<StyleProperty, Rule>();
    const before = rules.get(rule.property);
    if (before === undefined || before.weight < weight) rules.set(rule.property, rule);
    this.#simple.set(key, rules);
  }

  /**
   * What holds for one element (CSS Cascade): attributes least, then rules by weight, then its own `style`; importance
   * above all. O(its classes).
   */
  styleOf(name: string, attributes: Readonly<Record<string, string>>): Style {
    const style: Partial<Record<StyleProperty, string>> = {};
    const weights: Partial<Record<StyleProperty, number>> = {};
    const take = (property: StyleProperty, value: string, weight: number): void => {
      if (weight < (weights[property] ?? -1)) return;
      style[property] = value;
      weights[property] = weight;
    };
    for (const property of properties) {
      const value = attributes[property];
      if (value !== undefined && property !== 'transform') take(property, value, 0);
    }
    for (const rule of this.#rulesFor(name, attributes))
      take(rule.property, rule.value, rule.weight);
    for (const { property, value, important } of declarationsIn(attributes['style'] ?? ''))
      take(property, value, important ? 2e15 : 5e14);
    return style;
  }

  #rulesFor(name: string, attributes: Readonly<Record<string, string>>): readonly Rule[] {
    if (this.#order === 0) return [];
    const id = attributes['id'];
    const classes = new Set((attributes['class'] ?? '').split(/\s+/).filter((each) => each !== ''));
    const keys = ['*', name, ...(id === undefined ? [] : [`#${id}`])];
    for (const each of classes) keys.push(`.${each}`);
    const simple = keys.flatMap((key) => [...(this.#simple.get(key)?.values() ?? [])]);
    const compound = this.#compound.filter(({ selector }) => selects(selector, name, id, classes));
    return [...simple, ...compound];
  }
}

const withoutComments = (css: string): string => {
  const kept: string[] = [];
  let at = 0;
  for (let open = css.indexOf('/*'); open >= 0; open = css.indexOf('/*', at)) {
    kept.push(css.slice(at, open));
    const end = css.indexOf('*/', open + 2);
    if (end < 0) return kept.join(' ');
    at = end + 2;
  }
  return [...kept, css.slice(at)].join(' ').replaceAll(/<!--|-->/g, ' ');
};

/** The brace that closes the block opened here, whatever is within; below 0 where none does. */
const endOfBlock = (text: string, open: number): number => {
  let depth = 0;
  for (let at = open; at < text.length; at += 1) {
    const sign = text.charAt(at);
    if (sign === '{') depth += 1;
    if (sign === '}') depth -= 1;
    if (depth === 0) return at;
  }
  return -1;
};
