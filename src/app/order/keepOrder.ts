import { done, refused, type Outcome } from '../../core/problem.ts';
import type { StartedOrder } from '../../core/study/startedOrder.ts';
import type { Ports } from '../ports/ports.ts';
import { findStudy } from '../shared/findStudy.ts';
import { sameValue } from '../../core/sameValue.ts';

/**
 * Starts an order on a sheet, or says it anew under the same id. Sent twice it changes nothing.
 * Refuses: `study-not-found`, `order-id-taken`.
 */
export const keepOrder = (
  { store, clock }: Pick<Ports, 'store' | 'clock'>,
  studyId: string,
  order: StartedOrder,
): Promise<Outcome<{ readonly revision: number }>> =>
  store.change(async (session) => {
    const found = await findStudy(session, studyId);
    if (!found.ok) return found;
    const { study, revision } = found.value;
    const of = await session.studyOfOrder(order.id);
    if (of !== undefined && of !== studyId) return refused('order-id-taken', { id: order.id });
    if (
      sameValue(
        study.orders?.find(({ id }) => id === order.id),
        order,
      )
    )
      return done({ revision });
    await session.keepOrder(studyId, order);
    return done({ revision: await session.touch(studyId, clock.now()) });
  });

/** Removes an order; what was counted of it stays. Refuses: `study-not-found`, `order-not-found`. */
export const removeOrder = (
  { store, clock }: Pick<Ports, 'store' | 'clock'>,
  studyId: string,
  orderId: string,
): Promise<Outcome<{ readonly revision: number }>> =>
  store.change(async (session) => {
    const found = await findStudy(session, studyId);
    if (!found.ok) return found;
    if ((await session.studyOfOrder(orderId)) !== studyId)
      return refused('order-not-found', { id: orderId });
    await session.deleteOrder(orderId);
    return done({ revision: await session.touch(studyId, clock.now()) });
  });
