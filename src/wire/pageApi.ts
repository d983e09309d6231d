import { addresses, orderAddresses } from './addresses.ts';
import type { LeastRole } from '../core/role.ts';
import type { api } from './api.ts';
import type { orderApi } from './order.ts';
import type { Route } from './route.ts';

/** A route as the page carries it: its shapes are for the compiler, and weigh nothing. */
export interface Addressed<R extends Route> {
  readonly method: R['method'];
  readonly path: string;
  readonly least: LeastRole;
  /** Never there. */
  readonly shapes?: R;
}

export type AddressedAll<Api extends Readonly<Record<string, Route>>> = {
  readonly [Name in keyof Api]: Addressed<Api[Name]>;
};

/** Every route of the server, for the page. */
export const pageApi: AddressedAll<typeof api> = addresses;

/** Those of an order that is cut sheet by sheet. */
export const pageOrderApi: AddressedAll<typeof orderApi> = orderAddresses;
