import { z } from 'zod';
import { allRoutes } from '../wire/allRoutes.ts';
import { errorReply } from '../wire/problem.ts';
import type { Route } from '../wire/route.ts';
import { whoMay } from './whoMay.ts';

type Json = Readonly<Record<string, unknown>>;

/**
 * The routes as an OpenAPI 3.1 document, made from the very shapes that they are checked by: what a caller may send is
 * described by what goes in, what comes back by what comes out. ~50 ms.
 */
export const openApi = (version: string): Json => ({
  openapi: '3.1.0',
  info: {
    title: 'Throughcut',
    version,
    description:
      'The server of one workshop. Every refusal is {"error": {"code", "message", "remedy"}} with a status of 4xx, and changes nothing.',
  },
  paths: pathsOf(Object.entries(allRoutes)),
  components: { schemas: { Error: schemaOf(errorReply, 'output') } },
});

const pathsOf = (routes: readonly (readonly [name: string, route: Route])[]): Json => {
  const paths: Record<string, Json> = {};
  for (const [name, route] of routes) {
    const path = route.path.replace(/:([A-Za-z]+)/g, '{$1}');
    paths[path] = { ...paths[path], [route.method.toLowerCase()]: operation(name, route) };
  }
  return paths;
};

const operation = (
  name: string,
  { summary, params, query, body, takes, reply, ...who }: Route,
): Json => ({
  operationId: name,
  summary,
  description: `Who may: ${whoMay(who)}.`,
  'x-least-role': who.least,
  parameters: [...parametersOf('path', params), ...parametersOf('query', query)],
  ...(body === undefined
    ? {}
    : { requestBody: { required: true, content: asJson(schemaOf(body, 'input')) } }),
  ...(takes === undefined
    ? {}
    : {
        requestBody: {
          required: true,
          // Bytes as they are: OpenAPI 3.1 says nothing more of them.
          content: Object.fromEntries(takes.map((type) => [type, {}])),
        },
      }),
  responses: {
    200: {
      description: 'Done.',
      ...(reply === undefined ? {} : { content: asJson(schemaOf(reply, 'output')) }),
    },
    ...(who.least === 'anyone'
      ? {}
      : {
          403: {
            description: 'Whoever asks may not do this (`role-too-low`); nothing was changed.',
            content: asJson({ $ref: '#/components/schemas/Error' }),
          },
        }),
    '4XX': {
      description: 'Refused; nothing was changed.',
      content: asJson({ $ref: '#/components/schemas/Error' }),
    },
  },
});

const asJson = (schema: Json): Json => ({ 'application/json': { schema } });

const parametersOf = (place: 'path' | 'query', shape: z.ZodType | undefined): readonly Json[] => {
  if (shape === undefined) return [];
  const { properties = {}, required = [] } = z
    .object({
      properties: z.record(z.string(), z.unknown()).optional(),
      required: z.array(z.string()).optional(),
    })
    .parse(schemaOf(shape, 'input'));
  return Object.entries(properties).map(([name, schema]) => ({
    name,
    in: place,
    required: place === 'path' || required.includes(name),
    schema,
  }));
};

/** OpenAPI 3.1 takes JSON Schema as it is; the dialect is said once for the whole document. */
const schemaOf = (shape: z.ZodType, io: 'input' | 'output'): Json => {
  const schema: Record<string, unknown> = { ...z.toJSONSchema(shape, { io }) };
  delete schema['$schema'];
  return schema;
};
