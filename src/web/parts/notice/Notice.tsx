import type { ReactNode } from 'react';
import type { Problem } from '../../../core/problem.ts';
import { problemInWords } from '../../state/inWords.ts';
import './notice.css';

/** say: worth knowing. care: mind this before the next act. stop: this may not be done. */
export type NoticeTone = 'say' | 'care' | 'stop';

export interface NoticeProps {
  readonly tone: NoticeTone;
  readonly title?: string;
  /** Something beside or around it is read out in its stead. Else one that stops is, as it appears. */
  readonly isSaid?: boolean;
  readonly children: ReactNode;
}

const signs: Readonly<Record<NoticeTone, string>> = { say: 'i', care: '!', stop: '×' };

/** A remark that stands where it matters. Its tone shows by sign and edge as well as by colour. */
export const Notice = ({ tone, title, isSaid = false, children }: NoticeProps) => (
  <div className={`notice notice-${tone}`} role={tone === 'stop' && !isSaid ? 'alert' : undefined}>
    <span className="notice-sign" aria-hidden="true">
      {signs[tone]}
    </span>
    <div className="notice-body">
      {title === undefined ? null : <p className="notice-title">{title}</p>}
      {children}
    </div>
  </div>
);

/** A problem of any layer in words. */
export const ProblemNotice = ({
  problem,
  ...notice
}: Omit<NoticeProps, 'title' | 'children'> & { readonly problem: Problem }) => {
  const { message, remedy } = problemInWords(problem);
  return (
    <Notice {...notice} title={message}>
      <p>{remedy}</p>
    </Notice>
  );
};
