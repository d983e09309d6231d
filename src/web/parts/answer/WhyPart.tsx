import { lazy, useState } from 'react';
import type { EarlierSheet } from '../../../core/study/earlierSheet.ts';
import type { Study } from '../../../core/study/study.ts';
import { modelText as words } from '../../../words/texts.ts';
import { fetchPart } from '../../state/fetchPart.ts';
import { Fetched } from '../fetched/Fetched.tsx';
import '../more/more.css';

const WhyView = lazy(() => fetchPart(() => import('../why/WhyView.tsx')));

export interface WhyPartProps {
  readonly study: Study;
  readonly earlier: readonly EarlierSheet[];
}

/** “Why this speed?”, one click below the answer: reckoned only once it is opened. */
export const WhyPart = ({ study, earlier }: WhyPartProps) => {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <details className="more" onToggle={({ currentTarget }) => setIsOpen(currentTarget.open)}>
      <summary className="more-title">{words.why}</summary>
      <div className="more-body">
        {isOpen ? (
          <Fetched waiting={<p>{words.weighing}</p>}>
            <WhyView study={study} earlier={earlier} />
          </Fetched>
        ) : null}
      </div>
    </details>
  );
};
