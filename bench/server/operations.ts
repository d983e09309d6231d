import type { SeededRandom } from '../../src/num/seededRandom.ts';
import { fromSchema, type Schema } from './fromSchema.ts';

/** One thing that a server's description says can be asked. */
export interface Operation {
  readonly method: string;
  readonly path: string;
  readonly parameters: readonly { readonly name: string; readonly in: string; schema: Schema }[];
  readonly body?: Schema;
}

/** A stream that never ends, and what takes away what the others need. */
const notAsked = ['/api/live', '/api/example'];

/** One way to ask it. `ids`: what is there to be named. */
export const requestOf = (
  { path, parameters, body }: Operation,
  random: SeededRandom,
  ids: readonly string[],
): { readonly address: string; readonly body?: unknown } => {
  let address = path;
  const query = new URLSearchParams();
  for (const { name, in: place, schema } of parameters) {
    const made = fromSchema(schema, random, ids);
    const text = typeof made === 'string' ? made : JSON.stringify(made);
    if (place === 'path') address = address.replace(`{${name}}`, encodeURIComponent(text));
    else if (random.uniform() < 0.6) query.set(name, text);
  }
  const whole = query.size === 0 ? address : `${address}?${query.toString()}`;
  return body === undefined
    ? { address: whole }
    : { address: whole, body: fromSchema(body, random, ids) };
};

/** The server's description, as far as it is used. */
export interface Described {
  readonly paths: Readonly<
    Record<
      string,
      Readonly<
        Record<
          string,
          {
            readonly parameters?: Operation['parameters'];
            readonly requestBody?: {
              readonly content: Readonly<Record<string, { readonly schema: Schema }>>;
            };
          }
        >
      >
    >
  >;
}

/** What the description says can be asked, but for what would disturb the rest. */
export const operationsIn = ({ paths }: Described): readonly Operation[] =>
  Object.entries(paths)
    .filter(([path]) => !notAsked.includes(path))
    .flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, { parameters = [], requestBody }]): Operation => {
        const body = requestBody?.content['application/json']?.schema;
        return {
          method: method.toUpperCase(),
          path,
          parameters,
          ...(body === undefined ? {} : { body }),
        };
      }),
    );
