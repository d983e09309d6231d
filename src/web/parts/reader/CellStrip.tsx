import { lazy, Suspense, useEffect, type ComponentType } from 'react';
import type { HowItCame } from '../../../core/reading/cellEvent.ts';
import type { CellAsRead } from '../../../core/reading/readingEvent.ts';
import { grades, type Grade } from '../../../core/reading/grade.ts';
import type { EdgeKind } from '../../../core/reading/edge.ts';
import type { FlawKind } from '../../../core/stock/flawKind.ts';
import { readingText as words } from '../../../words/texts.ts';
import { fetchPart } from '../../state/fetchPart.ts';
import { Action } from '../action/Action.tsx';
import { Fetched } from '../fetched/Fetched.tsx';
import type { EdgeRowProps } from './EdgeRow.tsx';
import { GradeIcon } from './GradeIcon.tsx';
import { reasonName, SpoiltReasons } from './SpoiltReasons.tsx';
import { StandardAct } from './StandardAct.tsx';
import type { Reading } from './useReading.ts';

/** Fetched once a cell is chosen: the first screen needs none of it, and later the server may be away. */
const fetchAsCut = () => fetchPart(async () => ({ default: (await import('./AsCut.tsx')).AsCut }));
const AsCut = lazy(fetchAsCut);
/** The same; where it cannot be had, a shape is read without its edge, and nothing stands in the way. */
const fetchEdges = async (): Promise<{ default: ComponentType<EdgeRowProps> }> => {
  const row = await import('./EdgeRow.tsx').catch(() => undefined);
  return { default: row?.EdgeRow ?? (() => null) };
};
const EdgeRow = lazy(fetchEdges);

/** What the strip is asking about the chosen cell. */
export type Asking = 'grade' | 'why-spoilt' | 'as-cut';

export interface CellStripProps {
  readonly reading: Reading;
  readonly cell: CellAsRead | undefined;
  readonly asking: Asking;
  readonly flaws: FlawKind;
  /** Undefined: edges of such a sheet are not graded. */
  readonly edges: EdgeKind | undefined;
  readonly onAsk: (asking: Asking) => void;
}

/** Everything that can be said of the chosen cell; where none is chosen, how to look at one. */
export const CellStrip = ({ reading, cell, asking, flaws, edges, onAsk }: CellStripProps) => {
  const isChosen = cell !== undefined;
  useEffect(() => {
    if (!isChosen) return;
    void fetchAsCut().catch(() => undefined);
    void fetchEdges();
  }, [isChosen]);
  if (cell === undefined) return <StandardAct />;
  return (
    <div className="strip">
      <p className="strip-name figure-text">
        {words.cellName(cell.id, cell.setting)}
        {cell.corrected ? ` · ${words.corrected}` : ''}
      </p>
      {asking === 'why-spoilt' ? (
        <SpoiltReasons
          flaws={flaws}
          onSay={(reason) => {
            reading.spoil(cell.id, reason);
            onAsk('grade');
          }}
          onBack={() => onAsk('grade')}
        />
      ) : asking === 'as-cut' ? (
        <Fetched>
          <AsCut
            key={cell.id}
            name={`${reading.card.code}.${cell.id}`}
            setting={cell.setting}
            onSay={(setting) => {
              reading.correct(cell.id, setting);
              onAsk('grade');
            }}
            onBack={() => onAsk('grade')}
          />
        </Fetched>
      ) : (
        <Grades reading={reading} cell={cell} flaws={flaws} edges={edges} onAsk={onAsk} />
      )}
    </div>
  );
};

type GradesProps = Omit<CellStripProps, 'cell' | 'asking'> & { readonly cell: CellAsRead };

const Grades = ({ reading, cell, flaws, edges, onAsk }: GradesProps) => {
  const said = cell.reading;
  const grade = said.kind === 'graded' ? said.grade : undefined;
  return (
    <>
      <div className="strip-grades">
        {grades.map((each) => (
          <button
            key={each}
            type="button"
            className="strip-grade"
            aria-pressed={grade === each}
            onClick={() => reading.grade(cell.id, each)}
          >
            <GradeIcon of={each} />
            <span>{words.grades[each]}</span>
          </button>
        ))}
        <button
          type="button"
          className="strip-grade"
          aria-pressed={said.kind === 'spoilt'}
          onClick={() => onAsk('why-spoilt')}
        >
          <GradeIcon of="spoilt" />
          <span>{words.spoiltAsk}</span>
        </button>
      </div>
      <p className="strip-more">{explained(said, flaws)}</p>
      {edges !== undefined && said.kind === 'graded' && said.grade === 'out' ? (
        <Suspense>
          <EdgeRow
            kind={edges}
            said={said.edge}
            isTaped={reading.isTaped}
            onSay={(edge) => reading.gradeEdge(cell.id, edge)}
          />
        </Suspense>
      ) : null}
      <div className="actions strip-actions">
        {grade === 'out' || grade === 'hangs' ? (
          <How
            grade={grade}
            how={said.kind === 'graded' ? said.how : undefined}
            onSay={(how) => reading.grade(cell.id, grade, how)}
          />
        ) : null}
        <Action kind="quiet" onPress={() => onAsk('as-cut')}>
          {words.asCut}
        </Action>
        {said.kind === 'unread' ? null : (
          <Action kind="quiet" onPress={() => reading.clear(cell.id)}>
            {words.clear}
          </Action>
        )}
      </div>
    </>
  );
};

const explained = (said: CellAsRead['reading'], flaws: FlawKind): string => {
  if (said.kind === 'graded') {
    const { grade, source } = said;
    const more = words.gradeMore[grade];
    return source === undefined ? more : `${more} · ${words.sources[source]}`;
  }
  return said.kind === 'spoilt' ? reasonName(said.reason, flaws) : words.pickCell;
};

const waysOf: Readonly<Record<'out' | 'hangs', readonly HowItCame[]>> = {
  out: ['fell', 'pushed'],
  hangs: ['knife'],
};

interface HowProps {
  readonly grade: Extract<Grade, 'out' | 'hangs'>;
  readonly how: HowItCame | undefined;
  readonly onSay: (how: HowItCame) => void;
}

const How = ({ grade, how, onSay }: HowProps) => (
  <span className="strip-how" role="group" aria-label={words.how}>
    {waysOf[grade].map((each) => (
      <button
        key={each}
        type="button"
        className="strip-way"
        aria-pressed={how === each}
        onClick={() => onSay(each)}
      >
        {words.hows[each]}
      </button>
    ))}
  </span>
);
