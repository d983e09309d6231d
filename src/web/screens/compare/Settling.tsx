import { useLocation } from 'wouter';
import type { Comparison } from '../../../core/compare/compareConditions.ts';
import type { Difference } from '../../../core/compare/twoConditions.ts';
import type { Study } from '../../../core/study/study.ts';
import type { CautionAct } from '../../../words/caution.ts';
import { compareVerdictText as verdict, type SideNames } from '../../../words/en/compareVerdict.ts';
import { compareText as words } from '../../../words/en/screens/compare.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { keepNextRungs } from '../../state/nextRungs.ts';

export interface SettlingProps {
  readonly comparison: Comparison;
  readonly names: SideNames;
  readonly study: Study;
}

const cardActs: readonly CautionAct[] = ['unattended', 'card', 'always'];

const actsFor = (differs: Difference): readonly CautionAct[] => {
  if (differs === 'air') return ['airComparison', ...cardActs];
  return differs === 'lens' || differs === 'mirrors' ? ['focus', ...cardActs] : cardActs;
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
  return (
    <Section title={words.settle}>
      <p>
        {isBatch ? '' : `${verdict.cellsMore(comparison)} `}
        {verdict.ownSheets(comparison)}
      </p>
      {settling.settings.length === 0 || cells === 0 ? null : (
        <>
          <p>
            {words.settleCard(verdict.card(comparison))}{' '}
            {cells === null
              ? ''
              : words.settleCells(
                  Math.ceil(cells / settling.settings.length),
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
      )}
    </Section>
  );
};
