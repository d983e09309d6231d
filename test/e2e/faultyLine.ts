import { createServer, request, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

/** What becomes of a request: answered by whoever stands between, or never answered. */
export type Fault = { readonly status: number } | 'hang' | { readonly instead: string };

/** A line between the browser and the server that fails on demand, as networks and boxes between do. */
export interface FaultyLine {
  readonly base: string;
  /** From now on, requests whose method and address match, or the next `times` of them. The last that was said counts. */
  readonly fail: (what: RegExp, fault: Fault, times?: number) => void;
  readonly mend: () => void;
  /** How many requests that match are open now. */
  readonly open: (what: RegExp) => number;
  /** Every request so far, as method and address. */
  readonly asked: readonly string[];
  readonly close: () => Promise<void>;
}

/** Opens the line. `target`: where the server stands. */
export const openLine = async (target: string): Promise<FaultyLine> => {
  let faults: { readonly what: RegExp; readonly fault: Fault; times: number }[] = [];
  const asked: string[] = [];
  const open = new Set<string[]>();

  const pass = (incoming: IncomingMessage, reply: ServerResponse, path: string): void => {
    const { method, headers } = incoming;
    const onward = request(
      new URL(path, target),
      { method: method ?? 'GET', headers },
      (answer) => {
        reply.writeHead(answer.statusCode ?? 502, answer.headers);
        reply.flushHeaders();
        answer.pipe(reply);
        answer.on('error', () => reply.destroy());
      },
    );
    // A server that is away is nobody there, for the browser too.
    onward.on('error', () => reply.destroy());
    reply.on('close', () => onward.destroy());
    incoming.pipe(onward);
  };

  const server = createServer((incoming, reply) => {
    const line = `${incoming.method ?? ''} ${incoming.url ?? ''}`;
    asked.push(line);
    const here = [line];
    open.add(here);
    reply.on('close', () => open.delete(here));
    const found = faults.findLast(({ what, times }) => times > 0 && what.test(line));
    if (found !== undefined) found.times -= 1;
    const fault = found?.fault;
    if (fault === undefined) pass(incoming, reply, incoming.url ?? '/');
    else if (fault === 'hang') incoming.resume();
    else if ('instead' in fault) pass(incoming, reply, fault.instead);
    else reply.writeHead(fault.status, { 'content-type': 'text/plain' }).end('the box between');
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    base: `http://127.0.0.1:${String(port)}`,
    fail: (what, fault, times = Infinity) => void faults.push({ what, fault, times }),
    mend: () => {
      faults = [];
    },
    open: (what) => [...open].filter(([line = '']) => what.test(line)).length,
    asked,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
};
