import type { ReactNode } from 'react';
import { shellText } from '../../words/texts.ts';
import { OnlyIfCut } from '../parts/material/OnlyIfCut.tsx';
import { useStudy } from '../state/workshop.tsx';

/** A screen that is about cutting a sheet: only where its material may be cut. */
export const StudyIfCut = ({
  id,
  children,
}: {
  readonly id: string;
  readonly children: ReactNode;
}) => {
  const { study, loading } = useStudy(id);
  if (study === undefined)
    return loading ? <p className="page-wait">{shellText.loading}</p> : children;
  return (
    <OnlyIfCut stock={study.stock} studyId={id}>
      {children}
    </OnlyIfCut>
  );
};
