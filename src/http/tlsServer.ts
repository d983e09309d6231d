import type { RequestListener, Server } from 'node:http';
import { createServer } from 'node:https';
import { listening, requestLimitMs } from './halfRequests.ts';

export interface TlsOptions {
  /** PEM, both. */
  readonly cert: string;
  readonly key: string;
}

/** Makes the server that encrypts what it serves, with the same limits as the one that does not. */
export const tlsServer =
  ({ cert, key }: TlsOptions) =>
  (handler: RequestListener): Server => {
    // Of what the framework asks of a server both have the same.
    return createServer(
      { ...listening, cert, key, minVersion: 'TLSv1.2', requestTimeout: requestLimitMs },
      handler,
    );
  };
