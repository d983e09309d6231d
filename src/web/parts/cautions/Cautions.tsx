import { cautionsInEnglish } from '../../../words/en/cautions.ts';
import type { CautionAct } from '../../../words/caution.ts';
import { cautionsText as words } from '../../../words/en/screens/cautions.ts';
import { More } from '../more/More.tsx';
import './cautions.css';

export interface CautionsProps {
  readonly acts: readonly CautionAct[];
  /** Only what may never be left out, where the act is familiar. */
  readonly brief?: boolean;
  /** Tells it from other cautions on the same page. */
  readonly title?: string;
}

/** The cautions of an act, where the act is: the essential ones in the open, the rest one click below. */
export const Cautions = ({ acts, brief = false, title = words.title }: CautionsProps) => {
  const all = acts.flatMap((act) => cautionsInEnglish[act]);
  const essential = all.filter((caution) => caution.essential);
  const rest = all.filter((caution) => !caution.essential);
  return (
    <section className="cautions" aria-label={title}>
      <p className="cautions-title">
        <span className="cautions-sign" aria-hidden="true">
          !
        </span>
        {title}
      </p>
      <ul className="cautions-list">
        {essential.map(({ code, sentence }) => (
          <li key={code}>{sentence}</li>
        ))}
      </ul>
      {brief || rest.length === 0 ? null : (
        <More title={words.more}>
          <ul className="cautions-list">
            {rest.map(({ code, sentence }) => (
              <li key={code}>{sentence}</li>
            ))}
          </ul>
        </More>
      )}
    </section>
  );
};
