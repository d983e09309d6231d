import { useEffect, useState } from 'react';
import { allCautions, cautionsText as words } from '../../../words/texts.ts';
import type { Caution, CautionAct } from '../../../words/shape/caution.ts';
import { haveSeen, seenThisSession } from '../../state/cautionsSeen.ts';
import { More } from '../more/More.tsx';
import './cautions.css';

export interface CautionsProps {
  readonly acts: readonly CautionAct[];
  /** Only what may never be left out, where the act is familiar. */
  readonly brief?: boolean;
  /** Tells it from other cautions on the same page. */
  readonly title?: string;
}

/**
 * The cautions of an act, where the act is: the essential ones in the open, the rest one click below. Those of acts that were
 * met before in this session are a line, with all of them one click below; on paper they stand in full.
 */
export const Cautions = ({ acts, brief = false, title = words.title }: CautionsProps) => {
  // What was new when the page was opened stays in full as long as it is open.
  const [before] = useState(() => new Set(acts.filter(seenThisSession)));
  useEffect(() => haveSeen(acts), [acts]);
  const seen = acts.filter((act) => before.has(act));
  const fresh = acts.filter((act) => !before.has(act));
  const rest = brief ? [] : of(fresh).filter(({ essential }) => !essential);
  return (
    <section className="cautions" aria-label={title}>
      <p className="cautions-title">
        <span className="cautions-sign" aria-hidden="true">
          !
        </span>
        {title}
      </p>
      {fresh.length === 0 ? null : <Lines cautions={essentialOf(fresh)} />}
      {rest.length === 0 ? null : (
        <More title={words.more}>
          <Lines cautions={rest} />
        </More>
      )}
      {seen.length === 0 ? null : (
        <>
          <p className="cautions-again">{words.again(seen)}</p>
          <div className="cautions-on-paper">
            <Lines cautions={essentialOf(seen)} />
          </div>
          <div className="cautions-again">
            <More title={words.inFull}>
              <Lines cautions={of(seen)} />
            </More>
          </div>
        </>
      )}
    </section>
  );
};

const of = (acts: readonly CautionAct[]): readonly Caution[] =>
  acts.flatMap((act) => allCautions[act]);

const essentialOf = (acts: readonly CautionAct[]): readonly Caution[] =>
  of(acts).filter(({ essential }) => essential);

const Lines = ({ cautions }: { readonly cautions: readonly Caution[] }) => (
  <ul className="cautions-list">
    {cautions.map(({ code, sentence }) => (
      <li key={code}>{sentence}</li>
    ))}
  </ul>
);
