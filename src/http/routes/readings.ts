import type { FastifyInstance } from 'fastify';
import type { Ports } from '../../app/ports/ports.ts';
import { correctTally } from '../../app/order/correctTally.ts';
import { recordReadings } from '../../app/sheet/recordReadings.ts';
import { recordTally } from '../../app/order/recordTally.ts';
import { removeTally } from '../../app/order/removeTally.ts';
import { api } from '../../wire/api.ts';
import { on } from '../on.ts';

/** What fell out: of cards, and of orders. */
export const readingRoutes = (app: FastifyInstance, ports: Ports): void => {
  on(app, api.recordReadings, ({ params, body }) => recordReadings(ports, params.id, body.events));
  on(app, api.recordTally, ({ params, body }) => recordTally(ports, params.id, body));
  on(app, api.correctTally, ({ params, body }) => correctTally(ports, params.tallyId, body));
  on(app, api.removeTally, ({ params }) => removeTally(ports, params.id, params.tallyId));
};
