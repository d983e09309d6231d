import { pageApi } from '../../../wire/pageApi.ts';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import type { Stock } from '../../../core/stock/stock.ts';
import { bedText as words, studyText } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { More } from '../../parts/more/More.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { useWorkshop } from '../../state/workshop.tsx';
import { Said } from '../../parts/said/Said.tsx';

interface Removed {
  readonly id: string;
  readonly stock: Stock;
  readonly removedAt: string;
}

/** Sheets that were removed and can come back; the one that was removed just now stands open. */
export const RemovedSheets = ({
  removed,
  justNow,
}: {
  readonly removed: readonly Removed[];
  readonly justNow: string | undefined;
}) => {
  const last = removed.find(({ id }) => id === justNow);
  const others = removed.filter((one) => one !== last);
  return (
    <>
      {last === undefined ? null : (
        <Said what="done">
          <Notice tone="say" title={words.removed(nameOf(last.stock))}>
            <PutBack one={last} label={words.undoRemove} />
          </Notice>
        </Said>
      )}
      {others.length === 0 ? null : (
        <More title={words.removedBefore}>
          <ul className="sheets">
            {others.map((one) => (
              <li key={one.id}>
                <span>
                  {nameOf(one.stock)} · {new Date(one.removedAt).toLocaleDateString()}
                </span>
                <PutBack one={one} label={words.putBack} />
              </li>
            ))}
          </ul>
        </More>
      )}
    </>
  );
};

const PutBack = ({ one, label }: { readonly one: Removed; readonly label: string }) => {
  const { store } = useWorkshop();
  return (
    <div className="actions">
      <Action
        calls={pageApi.putBackStudy}
        onPress={() => store.make({ kind: 'put-back-study', studyId: one.id })}
      >
        {label}
      </Action>
    </div>
  );
};

const nameOf = (stock: Stock): string =>
  studyText.stock(stock.material, stockThicknessMm(stock), stock.thicknessReadingsMm.length > 0);
