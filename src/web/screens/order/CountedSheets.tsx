import type { CountedSheet } from '../../../core/study/orderSoFar.ts';
import type { StartedOrder } from '../../../core/study/startedOrder.ts';
import type { Study } from '../../../core/study/study.ts';
import { orderRunText as words } from '../../../words/texts.ts';
import { Section } from '../../parts/page/Page.tsx';
import { CountedOrder } from '../../parts/tally/CountedOrder.tsx';
import { useWorkshop } from '../../state/workshop.tsx';

export interface CountedSheetsProps {
  readonly study: Study;
  readonly order: StartedOrder;
  readonly sheets: readonly CountedSheet[];
}

/** Every sheet that was counted, the last first; a slip is put right where it stands. */
export const CountedSheets = ({ study, sheets }: CountedSheetsProps) => {
  const { store } = useWorkshop();
  const { id: studyId } = study;
  if (sheets.length === 0) return null;
  return (
    <Section title={words.sheets}>
      <ol className="order-sheets">
        {sheets.toReversed().map(({ sheet, number, tallies }) => (
          <li key={sheet}>
            <p className="order-sheet-name">{words.sheet(number)}</p>
            <ul className="sheets">
              {tallies.map((tally) => (
                <CountedOrder
                  material={study.stock.material}
                  key={tally.id}
                  tally={tally}
                  onCorrect={(corrected) =>
                    store.make({ kind: 'correct-tally', studyId, tally: corrected })
                  }
                  onRemove={() => store.make({ kind: 'remove-tally', studyId, tallyId: tally.id })}
                />
              ))}
            </ul>
          </li>
        ))}
      </ol>
    </Section>
  );
};
