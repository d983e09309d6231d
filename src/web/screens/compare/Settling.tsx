import { useLocation } from 'wouter';
import type { Comparison } from '../../../core/compare/compareConditions.ts';
import type { Difference } from '../../../core/compare/twoConditions.ts';
import type { Study } from '../../../core/study/study.ts';
import type { CautionAct } from '../../../words/caution.ts';
import { compareVerdictText as verdict, type SideNames } from '../../../words/en/compareVerdict.ts';
import { compareText as words } from '../../../words/en/screens/compare.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { More } from '../../parts/more/More.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { keepNextRungs } from '../../state/nextRungs.ts';

export interface SettlingProps {
  readonly comparison: Comparison;
  readonly names: SideNames;
  readonly study: Study;
}

/** What one card takes, at each setting and altogether. */
const mostEach = 24;
const mostCells = 120;

const cardActs: readonly CautionAct[] = ['unattended', 'card', 'always'];

const actsFor = (differs: Difference): readonly CautionAct[] => {
  if (differs === 'air') return ['airComparison', ...cardActs];
  return differs === 'lens' ? ['focus', ...cardActs] : cardActs;
};

/** How many cells would settle it, and the card to cut for that. */
export const Settling = ({ comparison, names, study }: SettlingProps) => {
  const [, goTo] = useLocation();
  const { settling, differs, read } = comparison;
  const isBatch = differs === 'batch';
  const cells = isBatch ? settling.onOwnSheets : settling.moreASide;
  const make = (side: 'one' | 'other'): void => {
    const { air } = read[side];
    keepNextRungs(
      study.id,
      settling.settings.map((setting) => (air === undefined ? setting : { ...setting, air })),
    );
    goTo(`/study/${study.id}/card?next`);
  };
  const isSettled = comparison.gainPct.low > 0 || comparison.gainPct.high < 0;
  const rungs = settling.settings.length;
  const theCard =
    rungs === 0 || cells === 0 ? null : (
      <>
        <p>
          {words.settleCard(verdict.card(comparison))}{' '}
          {cells === null
            ? ''
            : words.settleCells(
                Math.ceil(cells / rungs),
                Math.min(mostEach, Math.floor(mostCells / rungs)),
                isBatch ? words.settleBatches : words.settleSheet,
              )}
        </p>
        <ol className="compare-steps">
          {words.steps(differs).map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
        <Cautions acts={actsFor(differs)} title={words.cautions} />
        <div className="actions">
          {(['one', 'other'] as const).map((side) => (
            <Action key={side} onPress={() => make(side)}>
              {words.makeFor(names[side])}
            </Action>
          ))}
        </div>
      </>
    );
  return (
    <Section title={isSettled ? words.settleMore : words.settle}>
      <p>
        {isBatch ? '' : `${verdict.cellsMore(comparison)} `}
        {verdict.ownSheets(comparison)}
      </p>
      {isSettled && theCard !== null ? (
        <More title={words.settleMoreOpen}>{theCard}</More>
      ) : (
        theCard
      )}
    </Section>
  );
};
