import { pageOrderApi } from '../../../wire/pageApi.ts';
import { Reserved } from '../../parts/page/Reserved.tsx';
import { runningOrder } from '../../../core/study/orderSoFar.ts';
import type { Study } from '../../../core/study/study.ts';
import { shellText, orderRunText as words, studyText } from '../../../words/texts.ts';
import { ActionLink } from '../../parts/action/Action.tsx';
import { Page } from '../../parts/page/Page.tsx';
import { OnlyIfCut } from '../../parts/material/OnlyIfCut.tsx';
import { useStudy } from '../../state/workshop.tsx';
import { RunningOrder } from './RunningOrder.tsx';
import { StartOrder } from './StartOrder.tsx';
import { pages } from '../../state/pages.ts';
import './order.css';

export interface OrderScreenProps {
  readonly studyId: string;
  /** A new order is wanted, whatever runs. */
  readonly isNew?: boolean;
}

/** The order that is cut of a sheet: the one that runs, or a new one. */
export const OrderScreen = ({ studyId, isNew = false }: OrderScreenProps) => {
  const { study, loading } = useStudy(studyId);
  if (study !== undefined)
    return (
      <OnlyIfCut stock={study.stock} studyId={study.id}>
        <Opened study={study} isNew={isNew} />
      </OnlyIfCut>
    );
  if (loading) return <p className="page-wait">{shellText.loading}</p>;
  return (
    <Page title={words.start} lead={studyText.goneMore}>
      <div className="actions">
        <ActionLink href={pages.start}>{shellText.toStart}</ActionLink>
      </div>
    </Page>
  );
};

const Opened = ({ study, isNew }: { readonly study: Study; readonly isNew: boolean }) => {
  const order = isNew ? undefined : runningOrder(study.orders ?? [], study.tallies);
  return order === undefined ? (
    <Reserved call={pageOrderApi.keepOrder} title={words.start}>
      <StartOrder study={study} />
    </Reserved>
  ) : (
    <RunningOrder key={order.id} study={study} order={order} />
  );
};
