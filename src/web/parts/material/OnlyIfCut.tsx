import { useMemo, type ReactNode } from 'react';
import { acceptMaterial } from '../../../core/stock/acceptMaterial.ts';
import type { NamedMaterial } from '../../../core/stock/namedMaterial.ts';
import { materialText as words } from '../../../words/texts.ts';
import { ActionLink } from '../action/Action.tsx';
import { ProblemNotice } from '../notice/Notice.tsx';
import { pageAt, pages } from '../../state/pages.ts';

export interface OnlyIfCutProps {
  readonly stock: NamedMaterial;
  /** Where the sheet's facts are changed. */
  readonly studyId: string;
  readonly children: ReactNode;
}

/** Advice on a sheet whose material passes the gate; else why there is none. What was read of it stays to be seen. */
export const OnlyIfCut = ({ stock, studyId, children }: OnlyIfCutProps) => {
  const accepted = useMemo(() => acceptMaterial(stock), [stock]);
  if (accepted.ok) return children;
  const { problem } = accepted;
  return (
    <div className="stack">
      <ProblemNotice
        problem={problem}
        tone={problem.code === 'material-refused' ? 'stop' : 'care'}
      />
      <div className="actions">
        <ActionLink href={pageAt(pages.sheet, { id: studyId })}>{words.sayWhat}</ActionLink>
      </div>
    </div>
  );
};
