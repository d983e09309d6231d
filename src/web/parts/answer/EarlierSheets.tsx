import { countEarlier, type EarlierCount } from '../../../core/study/historyOf.ts';
import { modelText as words } from '../../../words/texts.ts';
import { leaveEarlierOut, type Earlier } from '../../state/useEarlier.ts';
import { Choice } from '../choice/Choice.tsx';

export interface EarlierSheetsProps {
  readonly studyId: string;
  /** What the answer that is shown leans on. */
  readonly leansOn: EarlierCount;
  /** Whether it stopped leaning because this sheet is otherwise. */
  readonly disagrees?: boolean;
  readonly earlier: Earlier;
}

/** How much of earlier sheets stands behind the answer, and a way to do without. */
export const EarlierSheets = ({
  studyId,
  leansOn,
  disagrees = false,
  earlier,
}: EarlierSheetsProps) => {
  const { known, state, isLeftOut } = earlier;
  const there = countEarlier(known);
  if (state === 'asking') return null;
  if (known.length === 0)
    return <p className="small">{state === 'away' ? words.earlierAway : words.earlierNone}</p>;
  const isUsed = leansOn.cells + leansOn.parts > 0;
  const said = isUsed
    ? words.earlierUsed(leansOn)
    : isLeftOut
      ? words.earlierLeftOut(there)
      : disagrees
        ? words.earlierOtherwise(there)
        : words.earlierUnsettled(there);
  return (
    <>
      <p className="small">
        {said} {isUsed ? words.earlierTeach : ''}
      </p>
      <Choice
        label={words.earlier}
        value={isLeftOut ? 'without' : 'with'}
        options={(['with', 'without'] as const).map((value) => ({
          value,
          label: words.earlierOptions[value],
        }))}
        onChange={(value) => leaveEarlierOut(studyId, value === 'without')}
      />
    </>
  );
};
