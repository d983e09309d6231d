import type { ReactNode } from 'react';
import { roleText as words } from '../../../words/texts.ts';
import { useMay, type Takes } from '../../state/role.ts';

export interface IfMayProps {
  /** The route that stands behind it. */
  readonly call: Takes;
  /** It would be missed: in its place stands one sentence, with what it is about. */
  readonly isSaid?: boolean;
  readonly children: ReactNode;
}

/** What takes more than everybody may is not there for those who may not. */
export const IfMay = ({ call, isSaid = false, children }: IfMayProps) => {
  const may = useMay();
  if (may(call)) return children;
  return isSaid ? <p className="soft">{words.notHere(words.least[call.least])}</p> : null;
};
