import type { ServerResponse } from 'node:http';
import type { FastifyInstance } from 'fastify';
import type { StoredChange } from '../app/ports/storedChange.ts';
import { done } from '../core/problem.ts';
import { api } from '../wire/api.ts';
import type { LiveEvent } from '../wire/live.ts';
import type { Gate } from './gate.ts';
import { on } from './on.ts';

/** Where changes are told and heard. */
export interface Changes {
  readonly tell: (change: StoredChange) => void;
  /** Gives a way to stop hearing. */
  readonly hear: (listener: (change: StoredChange) => void) => () => void;
}

export const openChanges = (): Changes => {
  const listeners = new Set<(change: StoredChange) => void>();
  return {
    tell: (change) => {
      for (const listener of listeners) listener(change);
    },
    hear: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
};

/** How often a silent stream says that it is still there: some networks close what is silent for a minute. */
const breathMs = 25_000;

export interface ServedLive {
  readonly changes: Changes;
  readonly gate: Gate;
  /** Told of each stream that opens and closes. */
  readonly counted: (change: 1 | -1) => void;
}

/** The stream of changes, so that the desk sees what the phone taps. It carries no data: who wants them asks for them. */
export const serveLive = (app: FastifyInstance, { changes, gate, counted }: ServedLive): void => {
  const open = new Set<ServerResponse>();
  // Before the server waits for what is under way: a stream would never end by itself.
  app.addHook('preClose', () => {
    for (const stream of open) stream.end();
    return Promise.resolve();
  });
  on(app, api.live, async ({ request, reply }) => {
    const phone = await gate.phoneOf(request);
    let role = await gate.roleNow(request);
    const stream = reply.raw;
    const headers = Object.entries(reply.getHeaders()).filter(([, value]) => value !== undefined);
    reply.hijack();
    stream.writeHead(200, {
      ...Object.fromEntries(headers),
      'content-type': 'text/event-stream',
      'cache-control': 'no-store',
    });
    const tell = (said: LiveEvent): void => void stream.write(`data: ${JSON.stringify(said)}\n\n`);
    stream.write(': here\n\n');
    // The desk runs the place, and need not be told.
    if (phone !== undefined && role !== undefined) tell({ role });
    open.add(stream);
    counted(1);
    /** Looks again whether, and as what, the one who listens is let in. */
    const look = async (): Promise<void> => {
      const before = role;
      role = await gate.roleNow(request);
      if (role === undefined) stream.end();
      else if (role === before) stream.write(': still here\n\n');
      else tell({ role });
    };
    const lookIfThere = (): void =>
      // The store may not answer: nothing is told meanwhile either.
      void look().catch(() => undefined);
    const stop = changes.hear(({ phoneOut, phoneChanged, ...change }) => {
      if (phone !== undefined && phoneOut === phone.id) stream.end();
      else tell(change);
      if (phone !== undefined && phoneChanged === phone.id) lookIfThere();
    });
    // What another program said of a phone may have been missed.
    const breath = setInterval(lookIfThere, breathMs);
    request.raw.on('close', () => {
      clearInterval(breath);
      open.delete(stream);
      counted(-1);
      stop();
    });
    return done(undefined);
  });
};
