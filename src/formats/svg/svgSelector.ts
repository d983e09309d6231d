/** `path.cut`, `.cut`, `#a`, `*`: what one element must be, with nothing around it. */
export interface Selector {
  readonly name?: string;
  readonly id?: string;
  readonly classes: readonly string[];
}

/** Undefined for what asks for anything around the element, for a state or an attribute. */
export const selectorOf = (text: string): Selector | undefined => {
  const found = /^(\*|[a-z][\w-]*)?((?:[.#][\w-]+)*)$/i.exec(text);
  if (found === null || text === '') return undefined;
  const parts = (found[2] ?? '').match(/[.#][\w-]+/g) ?? [];
  const ids = parts.filter((part) => part.startsWith('#'));
  const [id] = ids;
  if (ids.length > 1) return undefined;
  return {
    ...(found[1] === undefined || found[1] === '*' ? {} : { name: found[1] }),
    ...(id === undefined ? {} : { id: id.slice(1) }),
    classes: parts.filter((part) => part.startsWith('.')).map((part) => part.slice(1)),
  };
};

/** The one thing that a selector asks for; undefined where it asks for several. */
export const keyOf = ({ name, id, classes }: Selector): string | undefined => {
  const asks = [
    ...(name === undefined ? [] : [name]),
    ...(id === undefined ? [] : [`#${id}`]),
    ...classes.map((each) => `.${each}`),
  ];
  return asks.length > 1 ? undefined : (asks[0] ?? '*');
};

/** Ids count more than classes, classes more than names. */
export const specificity = ({ name, id, classes }: Selector): number =>
  (id === undefined ? 0 : 1e4) + classes.length * 100 + (name === undefined ? 0 : 1);

export const selects = (
  selector: Selector,
  name: string,
  id: string | undefined,
  classes: ReadonlySet<string>,
): boolean =>
  (selector.name ?? name) === name &&
  (selector.id ?? id) === id &&
  selector.classes.every((each) => classes.has(each));
