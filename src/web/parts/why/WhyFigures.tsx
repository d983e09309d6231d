import { grades } from '../../../core/reading/grade.ts';
import type { ReactNode } from 'react';
import type {
  Explanation,
  LeftOut,
  PartLeftOut,
  SpeedExplained,
} from '../../../core/explain/explanation.ts';
import type { CutStudy } from '../../../core/cutmodel/cutStudy.ts';
import { speedWords, whyText as words } from '../../../words/texts.ts';

export interface WhyFiguresProps {
  readonly cut: CutStudy;
  readonly explanation: Explanation;
  readonly speed: SpeedExplained;
}

/** The statistics: the answer without each part, after one more cell, under other assumptions; what was learnt. */
export const WhyFigures = ({ cut, explanation, speed }: WhyFiguresProps) => (
  <div className="stack">
    <Figures title={words.partsTable} head={[words.part, words.becomes, words.moves, words.by]}>
      {partsOf(cut, speed).map(([name, part], i) => (
        <Row
          key={i}
          cells={[
            name,
            words.orNone(part.speedMmPerS),
            words.shift(part.shiftPct),
            { fit: words.byFit, weights: words.byWeights, 'rough-weights': words.byRoughWeights }[
              part.by
            ],
          ]}
        />
      ))}
    </Figures>
    <Figures title={words.nextTable} head={[words.at, words.comesOut, words.hangs, words.stays]}>
      {speed.nextCells.map(({ speedMmPerS, after }) => (
        <Row
          key={speedMmPerS}
          cells={[
            speedWords(speedMmPerS),
            ...grades.map(
              (grade) =>
                `${words.orNone(after[grade].speedMmPerS)} (${words.chance(after[grade].probability)}${after[grade].by === 'rough-weights' ? `, ${words.rough}` : ''})`,
            ),
          ]}
        />
      ))}
    </Figures>
    <Figures title={words.whatIfTable} head={[words.assumption, words.becomes, words.moves]}>
      {speed.whatIf.map(({ name, speedMmPerS, shiftPct }) => (
        <Row
          key={name}
          cells={[words.whatIf[name], words.orNone(speedMmPerS), words.shift(shiftPct)]}
        />
      ))}
    </Figures>
    {speed.untried.length > 0 && <p className="small soft">{words.untried(speed.untried)}</p>}
    <Figures
      title={words.learntTable}
      head={[words.quantity, words.before, words.after, words.learnt]}
    >
      {explanation.learnt.map(({ name, priorMean, priorSd, mean, sd, learntPct }) => (
        <Row
          key={name}
          cells={[
            words.quantities[name],
            words.figure(priorMean, priorSd),
            words.figure(mean, sd),
            words.learntShare(learntPct),
          ]}
        />
      ))}
    </Figures>
    <p className="small soft">{words.inLn}</p>
    <p className="small soft">{words.reckoned(explanation.calculation)}</p>
  </div>
);

const partsOf = (cut: CutStudy, speed: SpeedExplained): readonly (readonly [string, LeftOut])[] => [
  ...[...speed.rungs]
    .sort((a, b) => speedAt(cut, a) - speedAt(cut, b))
    .map((rung): readonly [string, LeftOut] => {
      const cell = cut.cells[rung.cells[0] ?? -1];
      return [words.rung(cell?.speedMmPerS ?? 0, cell?.powerPct ?? 0, rung.cells.length), rung];
    }),
  ...speed.cards.map((card): readonly [string, LeftOut] => [
    words.card(card.name, card.cells.length),
    card,
  ]),
  ...speed.orders.map((order): readonly [string, LeftOut] => [
    words.order(order.name, order.shapes),
    order,
  ]),
  ...(speed.habit === undefined ? [] : [[words.habit, speed.habit] as const]),
  ...speed.earlier.map((batch, i): readonly [string, LeftOut] => [
    words.earlierBatch(i, batch.shapes),
    batch,
  ]),
];

const speedAt = (cut: CutStudy, { cells }: PartLeftOut): number =>
  cut.cells[cells[0] ?? -1]?.speedMmPerS ?? 0;

const Figures = ({
  title,
  head,
  children,
}: {
  readonly title: string;
  readonly head: readonly string[];
  readonly children: ReactNode;
}) => (
  <div className="why-table-room">
    <table className="why-table">
      <caption>{title}</caption>
      <thead>
        <tr>
          {head.map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>{children}</tbody>
    </table>
  </div>
);

const Row = ({ cells: [first, ...rest] }: { readonly cells: readonly string[] }) => (
  <tr>
    <th scope="row">{first}</th>
    {rest.map((cell, i) => (
      <td key={i}>{cell}</td>
    ))}
  </tr>
);
