import { Link } from 'wouter';
import { describePower } from '../../../core/tube/deliveredPower.ts';
import type { Machine } from '../../../core/machine/machine.ts';
import { answerText as words } from '../../../words/texts.ts';
import { pages } from '../../state/pages.ts';

/** What the power setting draws at the tube, as far as that is known; else what is missing to say it. */
export const TubeLine = ({ machine, powerPct }: { machine: Machine; powerPct: number }) => {
  const { currentMa, ratedCurrentPct, overdriven } = describePower(machine, powerPct);
  if (currentMa === undefined || ratedCurrentPct === undefined) {
    return (
      <p className="small soft">
        {words.missing.current} <Link href={pages.machine}>{words.missing.tell}</Link>
      </p>
    );
  }
  return (
    <p className={overdriven ? 'answer-guess' : 'small soft'}>
      {words.draws(powerPct, currentMa, ratedCurrentPct)}
      {overdriven ? ` ${words.overdrive}` : ''}
    </p>
  );
};
