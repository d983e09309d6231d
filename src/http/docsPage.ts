import type { FastifyInstance } from 'fastify';
import { allRoutes } from '../wire/allRoutes.ts';
import { whoMay } from './whoMay.ts';

/** What there is: for programs at /api/openapi.json, for people in one plain table at /api/docs. */
export const serveDocs = (app: FastifyInstance, version: string): void => {
  app.get('/api/openapi.json', forAll, async () => {
    const { openApi } = await import('./openApi.ts');
    return openApi(version);
  });
  app.get('/api/docs', forAll, (_request, reply) =>
    reply.type('text/html; charset=utf-8').send(page()),
  );
};

/** Who may read: see `Route`. */
const least = 'reads-and-counts';
const forAll = { config: { least } } as const;

/** The two of this file. */
const ownRoutes = [
  { method: 'GET', path: '/api/openapi.json', least, summary: 'The routes as an OpenAPI document' },
  { method: 'GET', path: '/api/docs', least, summary: 'This page' },
] as const;

const page = (): string => `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>Throughcut: its routes</title>
<style>
  body { font: 1rem/1.5 system-ui, sans-serif; margin: 2rem auto; max-width: 60rem; padding: 0 1rem; color-scheme: light dark }
  th, td { text-align: left; padding: .3rem .8rem .3rem 0; vertical-align: top }
  code { white-space: nowrap }
</style>
<h1>Throughcut: its routes</h1>
<p>The shapes of what goes in and comes out: <a href="/api/openapi.json">openapi.json</a> (OpenAPI 3.1).
Every refusal is <code>{"error": {"code", "message", "remedy"}}</code> with a status of 4xx, and changes nothing.</p>
<table>
<thead><tr><th>Method<th>Address<th>What it does<th>Who may</thead>
<tbody>
${[...Object.values(allRoutes), ...ownRoutes]
  .map(
    ({ method, path, summary, ...who }) =>
      `<tr><td>${method}<td><code>${path}</code><td>${summary}<td>${whoMay(who)}`,
  )
  .join('\n')}
</tbody>
</table>
</html>
`;
