import { pageOrderApi } from '../../../wire/pageApi.ts';
import { orderSoFar, runningOrder } from '../../../core/study/orderSoFar.ts';
import type { Study } from '../../../core/study/study.ts';
import { orderLinkText as words } from '../../../words/texts.ts';
import { useStudy } from '../../state/workshop.tsx';
import { ActionLink } from '../action/Action.tsx';
import { pageAt, pages } from '../../state/pages.ts';

export interface OrderLinkProps {
  readonly studyId: string;
}

/** The way to the order that runs on a sheet, or to starting one. */
export const OrderLink = ({ studyId }: OrderLinkProps) => {
  const { study } = useStudy(studyId);
  return study === undefined ? null : <Link study={study} />;
};

const Link = ({ study }: { readonly study: Study }) => {
  const order = runningOrder(study.orders ?? [], study.tallies);
  const isRunning = order !== undefined && !orderSoFar(order, study.tallies).isDone;
  return (
    <ActionLink
      calls={order === undefined ? pageOrderApi.keepOrder : undefined}
      kind={isRunning ? 'strong' : 'plain'}
      href={pageAt(pages.order, { id: study.id })}
    >
      {isRunning ? words.goOn : order === undefined ? words.start : words.look}
    </ActionLink>
  );
};
