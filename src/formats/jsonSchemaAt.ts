import { z } from 'zod';

/** The few words of JSON Schema that are needed to tell a person what was wanted. */
const node = z.object({
  type: z.string().optional(),
  const: z.unknown().optional(),
  enum: z.array(z.unknown()).optional(),
  get properties() {
    return z.record(z.string(), node).optional();
  },
  get items() {
    return z.union([node, z.boolean()]).optional();
  },
  get prefixItems() {
    return z.array(node).optional();
  },
  get anyOf() {
    return z.array(node).optional();
  },
  get oneOf() {
    return z.array(node).optional();
  },
  get allOf() {
    return z.array(node).optional();
  },
  get additionalProperties() {
    return z.union([node, z.boolean()]).optional();
  },
});
type Node = z.infer<typeof node>;

/** What a schema allows at a path; several where it allows alternatives. Empty where it says nothing. */
const nodesAt = (schema: z.ZodType, path: readonly PropertyKey[]): readonly Node[] => {
  const root = node.safeParse(
    z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any', reused: 'inline' }),
  );
  let nodes: readonly Node[] = root.success ? alternatives(root.data) : [];
  for (const step of path) nodes = nodes.flatMap((at) => below(at, step)).flatMap(alternatives);
  return nodes;
};

const alternatives = (at: Node): readonly Node[] => [
  at,
  ...[at.anyOf, at.oneOf, at.allOf].flatMap((several) => (several ?? []).flatMap(alternatives)),
];

const below = (at: Node, step: PropertyKey): readonly Node[] => {
  if (typeof step === 'number') {
    const item = at.prefixItems?.[step] ?? at.items;
    return typeof item === 'object' ? [item] : [];
  }
  const named = at.properties?.[String(step)] ?? at.additionalProperties;
  return typeof named === 'object' ? [named] : [];
};

/** The keys that a schema knows in the object at a path. */
export const keysAt = (schema: z.ZodType, path: readonly PropertyKey[]): readonly string[] => [
  ...new Set(nodesAt(schema, path).flatMap(({ properties }) => Object.keys(properties ?? {}))),
];

/** What a schema allows at a path, written as it would stand in the file: `"off", "pump" or { "kPa": … }`. */
export const allowedAt = (schema: z.ZodType, path: readonly PropertyKey[]): string => {
  const written = nodesAt(schema, path).flatMap((at): readonly string[] => {
    if (at.const !== undefined) return [JSON.stringify(at.const)];
    if (at.enum !== undefined) return at.enum.map((value) => JSON.stringify(value));
    if (at.properties !== undefined)
      return [
        `{ ${Object.keys(at.properties)
          .map((key) => `"${key}": …`)
          .join(', ')} }`,
      ];
    return [];
  });
  return [...new Set(written)].join(', ');
};
