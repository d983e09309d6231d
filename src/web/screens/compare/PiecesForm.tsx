import { pieceKey, type PieceRead } from '../../../core/compare/pieces.ts';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import type { Study } from '../../../core/study/study.ts';
import { compareText as words, studyText } from '../../../words/texts.ts';
import { ActionLink } from '../../parts/action/Action.tsx';
import { Choice } from '../../parts/choice/Choice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { Field } from '../../parts/quantity/Field.tsx';
import { useStudies } from '../../state/queries.ts';
import { sideNames, sidesOf, type CompareDraft } from './sides.ts';
import { pageAt, pages } from '../../state/pages.ts';

/** So many other sheets are offered, the last touched first. */
const mostOffered = 100;

export interface PiecesFormProps {
  readonly study: Study;
  readonly pieces: readonly PieceRead[];
  readonly draft: CompareDraft;
  readonly onChange: (draft: CompareDraft) => void;
  readonly otherId: string | undefined;
  readonly onOther: (id: string | undefined) => void;
}

/** Which read cards lie on which side. */
export const PiecesForm = (props: PiecesFormProps) => {
  const { study, pieces, draft, onChange, otherId, onOther } = props;
  const sides = sidesOf(pieces, draft);
  return (
    <Section title={words.pick}>
      {pieces.length > 1 ? <p className="soft">{words.pickMore}</p> : null}
      {pieces.map((piece, i) => (
        <div key={pieceKey(piece)} className="compare-piece">
          <p>
            <strong>{words.piece(piece)}</strong>
            <span className="small soft"> {words.pieceMore(piece)}</span>
          </p>
          <Choice
            label={words.piece(piece)}
            hideLabel
            value={sides[i]}
            options={sideNames.map((value) => ({ value, label: words.sides[value] }))}
            onChange={(side) =>
              onChange({ ...draft, laid: { ...draft.laid, [pieceKey(piece)]: side } })
            }
          />
        </div>
      ))}
      {pieces.length < 2 ? (
        <>
          <p>{pieces.length === 0 ? words.noPieces : words.onePiece}</p>
          <div className="actions">
            <ActionLink href={pageAt(pages.study, { id: study.id })}>{words.toSheet}</ActionLink>
          </div>
        </>
      ) : null}
      <OtherSheet study={study} chosen={otherId} onChoose={onOther} />
    </Section>
  );
};

interface OtherSheetProps {
  readonly study: Study;
  readonly chosen: string | undefined;
  readonly onChoose: (id: string | undefined) => void;
}

/** Another sheet of the same material whose cards may be laid as well. */
const OtherSheet = ({ study, chosen, onChoose }: OtherSheetProps) => {
  const { data } = useStudies({ like: study.id, limit: mostOffered });
  const others = data?.studies ?? [];
  if (others.length === 0) return null;
  return (
    <Field label={words.otherSheet}>
      {(box) => (
        <select
          {...box}
          className="field-input"
          value={chosen ?? ''}
          onChange={({ target }) => onChoose(target.value === '' ? undefined : target.value)}
        >
          <option value="">{words.noOtherSheet}</option>
          {others.map(({ id, stock, touchedAt, cardCodes }) => (
            <option key={id} value={id}>
              {studyText.stock(
                stock.material,
                stockThicknessMm(stock),
                stock.thicknessReadingsMm.length > 0,
              )}
              , {new Date(touchedAt).toLocaleDateString()} ({cardCodes.join(', ')})
            </option>
          ))}
        </select>
      )}
    </Field>
  );
};
