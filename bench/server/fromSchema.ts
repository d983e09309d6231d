import type { SeededRandom } from '../../src/num/seededRandom.ts';

/** What is used of JSON Schema. */
export interface Schema {
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema | boolean;
  readonly prefixItems?: readonly Schema[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
  readonly minItems?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly format?: string;
  readonly pattern?: string;
}

/** How often something is put in that the schema does not let expect. */
const oddShare = 0.02;
const odd: readonly unknown[] = [
  null,
  -1,
  1e308,
  '',
  '\u0000',
  [],
  {},
  'x'.repeat(3000),
  '١',
  true,
];
const words = ['birch plywood', 'poplar plywood', 'acrylic', 'PVC', 'spring', 'A1', 'K7QX', 'σ≤'];

/** A value as the schema has it, now and then with something odd in it. `ids`: what is there to be named. */
export const fromSchema = (
  schema: Schema,
  random: SeededRandom,
  ids: readonly string[],
  depth = 0,
): unknown => {
  const of = (inner: Schema): unknown => fromSchema(inner, random, ids, depth + 1);
  const pick = <T>(all: readonly T[]): T | undefined => all[random.integer(all.length)];
  if (random.uniform() < oddShare) return pick(odd);
  if ('const' in schema) return schema.const;
  if (schema.enum !== undefined) return pick(schema.enum);
  const either = schema.anyOf ?? schema.oneOf;
  if (either !== undefined) return of(pick(either) ?? {});
  if (schema.allOf !== undefined) return Object.assign({}, ...schema.allOf.map(of)) as unknown;
  switch (schema.type) {
    case 'object': {
      const { properties = {}, required = [] } = schema;
      const made: Record<string, unknown> = {};
      for (const [name, inner] of Object.entries(properties))
        if (required.includes(name) || random.uniform() < (depth > 3 ? 0.2 : 0.5))
          made[name] = of(inner);
      return made;
    }
    case 'array': {
      if (schema.prefixItems !== undefined) return schema.prefixItems.map(of);
      const { items, minItems = 0 } = schema;
      const count = minItems + random.integer(depth > 3 ? 2 : 6);
      return typeof items === 'object' ? Array.from({ length: count }, () => of(items)) : [];
    }
    case 'integer':
    case 'number': {
      const least = schema.minimum ?? schema.exclusiveMinimum ?? 0;
      const most = schema.maximum ?? schema.exclusiveMaximum ?? 100;
      const value = least + random.uniform() * (Math.min(most, least + 200) - least);
      return schema.type === 'integer' ? Math.round(value) : Number(value.toPrecision(4));
    }
    case 'boolean':
      return random.uniform() < 0.5;
    case 'string':
      if (schema.format === 'date-time' || schema.pattern?.includes('T') === true)
        return new Date(1.9e12 + random.integer(1e9)).toISOString();
      return (random.uniform() < 0.5 ? pick(ids) : pick(words)) ?? 'x';
    default:
      return random.uniform() < 0.5 ? {} : pick(words);
  }
};
