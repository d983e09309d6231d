import { lazy, Suspense, useState } from 'react';
import type { EarlierSheet } from '../../../core/study/earlierSheet.ts';
import type { Study } from '../../../core/study/study.ts';
import { modelText as words } from '../../../words/en/screens/model.ts';
import { patiently } from '../../state/patiently.ts';
import '../more/more.css';

const WhyView = lazy(() => patiently(() => import('../why/WhyView.tsx')));

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
          <Suspense fallback={<p>{words.weighing}</p>}>
            <WhyView study={study} earlier={earlier} />
          </Suspense>
        ) : null}
      </div>
    </details>
  );
};
