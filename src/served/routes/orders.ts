import { keepOrder, removeOrder } from '../../app/order/keepOrder.ts';
import { andThen, done } from '../../core/problem.ts';
import { planFile } from '../../formats/planFile.ts';
import { parsePlanStudy } from '../../formats/studyFile.ts';
import { orderApi } from '../../wire/order.ts';
import { problemInWords } from '../../words/words.ts';
import type { Site } from '../site.ts';
import type { ServedPorts } from '../servedPorts.ts';

/** Orders that are cut sheet by sheet. */
export const orderRoutes = (site: Site, ports: ServedPorts): void => {
  site.put(orderApi.keepOrder, ({ params, body }) =>
    keepOrder(ports, params.id, { ...body, id: params.orderId }),
  );
  site.put(orderApi.removeOrder, ({ params }) => removeOrder(ports, params.id, params.orderId));
  site.put(orderApi.planStartedOrder, async ({ params, query, gone }) => {
    const { planStartedOrder } = await import('../../app/order/planStartedOrder.ts');
    const { id: studyId, orderId } = params;
    const planned = await planStartedOrder(ports.until(gone), { studyId, orderId }, query);
    return andThen(planned, ({ plan, ofMaterial }) =>
      done(planFile(plan, ofMaterial, problemInWords)),
    );
  });
  site.put(orderApi.calcPlan, async ({ body, gone }) => {
    const file = parsePlanStudy(body);
    if (!file.ok) return file;
    const planned = await ports.until(gone).model.ask('planOrder', { ...file.value, earlier: [] });
    return andThen(planned, ({ plan, ofMaterial }) =>
      done(planFile(plan, ofMaterial, problemInWords)),
    );
  });
};
