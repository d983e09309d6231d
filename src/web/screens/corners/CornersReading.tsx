import { useMemo } from 'react';
import { bedTestReport, type BedTestCell, type UnkeptBedTest } from '../../../core/bed/bedTest.ts';
import type { BedCell } from '../../../core/bed/fourCorners.ts';
import type { BedPlace } from '../../../core/bed/place.ts';
import type { Grade } from '../../../core/reading/grade.ts';
import { cornersText as words, readingText } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { GradeIcon } from '../../parts/reader/GradeIcon.tsx';
import { StandardAct } from '../../parts/reader/StandardAct.tsx';
import { useDraft } from '../../state/useDraft.ts';
import { CornersAnswer } from './CornersAnswer.tsx';
import { KeepCorners } from './KeepCorners.tsx';
import '../../parts/reader/reader.css';

/** As they lie on the bed, back row first, for eyes that stand in front. */
const asSeen: readonly BedPlace[] = ['back-left', 'back-right', 'front-left', 'front-right'];

const next: Readonly<Record<Grade | 'unread', Grade | undefined>> = {
  unread: 'out',
  out: 'hangs',
  hangs: 'stays',
  stays: undefined,
};

type Grades = Readonly<Record<string, Grade | undefined>>;

export interface CornersReadingProps {
  /** What is tapped is kept under it. */
  readonly name: string;
  readonly cells: readonly BedCell[];
  /** What is kept beside the grades. */
  readonly about: Omit<UnkeptBedTest, 'cells'>;
  /** Whether a card of this sheet told the scatter. */
  readonly isStudied: boolean;
}

/** The four clusters, to be tapped as they lie; below them the answer. */
export const CornersReading = ({ name, cells, about, isStudied }: CornersReadingProps) => {
  const [grades, setGrades, sent] = useDraft<Grades>({
    name: `corners.read.${name}`,
    initial: {},
    of: cells.length,
  });
  const forget = (): void => {
    setGrades({});
    sent();
  };
  const graded = useMemo(() => gradedOf(cells, grades), [cells, grades]);
  const { scatter } = about;
  const report = useMemo(() => bedTestReport({ cells: graded, scatter }), [graded, scatter]);
  const isRead = graded.length > 0;
  const tap = (id: string): void => setGrades({ ...grades, [id]: next[grades[id] ?? 'unread'] });
  return (
    <>
      <Section title={words.read}>
        <div className="bench corners-bench">
          <StandardAct />
          <div className="corners-places">
            {asSeen.map((place) => (
              <div key={place} role="group" aria-label={words.places[place]}>
                <p className="strip-name">{words.places[place]}</p>
                <div className="corners-cells">
                  {cells
                    .filter((cell) => cell.place === place)
                    .map(({ id }) => (
                      <CellTap key={id} id={id} grade={grades[id]} onTap={() => tap(id)} />
                    ))}
                </div>
              </div>
            ))}
          </div>
        </div>
        <p className="small">{words.readMore}</p>
        <p className="small soft">{words.keepMore}</p>
        <div className="actions">
          <KeepCorners test={isRead ? { ...about, cells: graded } : undefined} onKept={forget} />
          <Action kind="quiet" onPress={forget}>
            {words.clear}
          </Action>
          <Action kind="quiet" onPress={() => globalThis.print()}>
            {words.print}
          </Action>
        </div>
      </Section>
      {isRead ? <CornersAnswer report={report} isStudied={isStudied} /> : null}
    </>
  );
};

interface CellTapProps {
  readonly id: string;
  readonly grade: Grade | undefined;
  readonly onTap: () => void;
}

const CellTap = ({ id, grade, onTap }: CellTapProps) => {
  const state = grade === undefined ? readingText.unread : readingText.grades[grade];
  return (
    <button type="button" className="strip-grade corners-cell" data-corner={id} onClick={onTap}>
      {grade === undefined ? <span className="corners-blank" /> : <GradeIcon of={grade} />}
      <span>
        {id} <span className="corners-state">{state}</span>
      </span>
    </button>
  );
};

const gradedOf = (cells: readonly BedCell[], grades: Grades): readonly BedTestCell[] =>
  cells.flatMap(({ id, place }) => {
    const grade = grades[id];
    return grade === undefined ? [] : [{ id, place, grade }];
  });
