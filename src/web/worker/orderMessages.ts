import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { OrderAnswer, OrderWish } from '../../core/order/orderAnswer.ts';
import type { Outcome } from '../../core/problem.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';

/** What the page asks of the thread that foretells orders: one order in the thread's life. */
export interface OrderQuestion {
  readonly study: CutStudy;
  readonly earlier: readonly EarlierSheet[];
  readonly wish: OrderWish;
}

/** What comes back. `broke`: a bug, told so that the page can say it. */
export type OrderReply =
  | { readonly kind: 'foretold'; readonly answer: Outcome<OrderAnswer> }
  | { readonly kind: 'broke'; readonly message: string };
