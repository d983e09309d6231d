import { STATUS_CODES } from 'node:http';
import type { Socket } from 'node:net';
import { problemOf, type ProblemOf } from '../core/problem.ts';
import type { ErrorReply } from '../wire/problem.ts';
import { problemInWords } from '../words/words.ts';
import type { HttpCode } from '../core/problems/http.ts';
import { refusalHeaders } from './safeHeaders.ts';
import { statusOf } from '../served/statusOf.ts';

/** A request that has not come whole after this time is ended: whoever sends so slowly holds a place for nothing. */
export const requestLimitMs = 20_000;

/** How the server that listens is made: with that limit, and looking for it often. */
export const listening = {
  requireHostHeader: false,
  headersTimeout: requestLimitMs,
  connectionsCheckingInterval: 1000,
} as const;

/** Answers what could not even be read as a request, in the words of every other refusal. */
export const refuseUnread = (error: Error & { readonly code?: string }, socket: Socket): void => {
  if (error.code === 'ECONNRESET' || !socket.writable || socket.bytesWritten > 0) {
    socket.destroy();
    return;
  }
  const problem = problemIn(error.code);
  const body = JSON.stringify({ error: problemInWords(problem) } satisfies ErrorReply);
  const status = statusOf(problem);
  const headers = { ...refusalHeaders, 'content-length': Buffer.byteLength(body) };
  const head = Object.entries({ ...headers, connection: 'close' }).map(
    ([name, value]) => `${name}: ${String(value)}`,
  );
  const first = `HTTP/1.1 ${String(status)} ${STATUS_CODES[status] ?? ''}`;
  socket.end([first, ...head, '', body].join('\r\n'));
};

const problemIn = (code: string | undefined): ProblemOf<HttpCode> => {
  switch (code) {
    case 'HPE_HEADER_OVERFLOW':
      return problemOf('request-head-too-big');
    case 'ERR_HTTP_REQUEST_TIMEOUT':
      return problemOf('request-took-too-long', { seconds: requestLimitMs / 1000 });
    default:
      return problemOf('request-not-http');
  }
};
