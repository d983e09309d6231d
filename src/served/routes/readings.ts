import type { Ports } from '../../app/ports/ports.ts';
import { correctTally } from '../../app/order/correctTally.ts';
import { recordReadings } from '../../app/sheet/recordReadings.ts';
import { recordTally } from '../../app/order/recordTally.ts';
import { removeTally } from '../../app/order/removeTally.ts';
import { api } from '../../wire/api.ts';
import type { Site } from '../site.ts';

/** What fell out: of cards, and of orders. */
export const readingRoutes = (site: Site, ports: Ports): void => {
  site.put(api.recordReadings, ({ params, body, author }) =>
    recordReadings({ ...ports, ...author }, params.id, body.events),
  );
  site.put(api.recordTally, ({ params, body, author }) =>
    recordTally({ ...ports, ...author }, params.id, body),
  );
  site.put(api.correctTally, ({ params, body, author }) =>
    correctTally({ ...ports, ...author }, params.tallyId, body),
  );
  site.put(api.removeTally, ({ params }) => removeTally(ports, params.id, params.tallyId));
};
