import { refused, type Outcome } from '../../core/problem.ts';
import { orderSoFar, planWishOf, studyOfOrder } from '../../core/study/orderSoFar.ts';
import { readWithHistory, type EarlierSheetsWish } from '../shared/history.ts';
import type { PlannedOrder } from '../sums/planOrder.ts';
import type { AskingPorts } from '../ports/ports.ts';

/**
 * The next act of an order that was started, by all that was counted of its sheet and with what earlier sheets taught.
 * Refuses: `study-not-found`, `order-not-found`, what `planOrder` and `Model` refuse.
 */
export const planStartedOrder = async (
  { store, model }: Pick<AskingPorts, 'store' | 'model'>,
  { studyId, orderId }: { readonly studyId: string; readonly orderId: string },
  wish: EarlierSheetsWish = {},
): Promise<Outcome<PlannedOrder>> => {
  const found = await readWithHistory({ store }, studyId, wish);
  if (!found.ok) return found;
  const { study, earlier } = found.value;
  const order = study.orders?.find(({ id }) => id === orderId);
  if (order === undefined) return refused('order-not-found', { id: orderId });
  const question = {
    study: studyOfOrder(study, order),
    wish: planWishOf(order, orderSoFar(order, study.tallies)),
    earlier,
  };
  return model.ask('planOrder', question, studyId);
};
