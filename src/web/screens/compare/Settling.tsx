import { pageApi } from '../../../wire/pageApi.ts';
import { useLocation } from 'wouter';
import type { Comparison } from '../../../core/compare/compareConditions.ts';
import type { Difference } from '../../../core/compare/twoConditions.ts';
import type { CautionAct } from '../../../words/shape/caution.ts';
import {
  compareVerdictText as verdict,
  type SideNames,
  compareText as words,
} from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { More } from '../../parts/more/More.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { keepNextCard } from '../../state/nextCard.ts';
import { pageAt, pages } from '../../state/pages.ts';

export interface SettlingProps {
  readonly comparison: Comparison;
  readonly names: SideNames;
  /** Where a side's next card belongs. */
  readonly studyOf: (side: 'one' | 'other') => string;
}

/** What one card takes, at each setting and altogether. */
const mostEach = 24;
const mostCells = 120;

/** Cells at each setting of one card, where as few cards as can be share them evenly. */
const shareOut = (wanted: number, perCard: number): number =>
  Math.ceil(wanted / Math.ceil(wanted / perCard));

const cardActs: readonly CautionAct[] = ['unattended', 'fire', 'card', 'beforeCut', 'always'];

const actsFor = (differs: Difference): readonly CautionAct[] => {
  if (differs === 'air') return ['airComparison', ...cardActs];
  return differs === 'lens' ? ['focus', ...cardActs] : cardActs;
};

/** How many cells would settle it, and the card to cut for that. */
export const Settling = ({ comparison, names, studyOf }: SettlingProps) => {
  const [, goTo] = useLocation();
  const { settling, differs, read } = comparison;
  const isBatch = differs === 'batch';
  const cells = isBatch ? settling.onOwnSheets : settling.moreASide;
  const rungs = settling.settings.length;
  const perCard = Math.min(mostEach, Math.floor(mostCells / Math.max(1, rungs)));
  const wantedEach = cells === null ? null : Math.ceil(cells / Math.max(1, rungs));
  const make = (side: 'one' | 'other'): void => {
    const { air, batch } = read[side];
    const studyId = studyOf(side);
    keepNextCard(
      studyId,
      settling.settings.map((setting) => (air === undefined ? setting : { ...setting, air })),
      {
        cellsEach: shareOut(wantedEach ?? perCard, perCard),
        ...(batch === undefined ? {} : { batch }),
        compared: {
          by: names[side],
          with: names[side === 'one' ? 'other' : 'one'],
          oneSheet: !isBatch,
        },
      },
    );
    goTo(`${pageAt(pages.newCard, { id: studyId })}?next`);
  };
  const isSettled = comparison.gainPct.low > 0 || comparison.gainPct.high < 0;
  const theCard =
    rungs === 0 || cells === 0 ? null : (
      <>
        <p>
          {words.settleCard(verdict.card(comparison))}{' '}
          {wantedEach === null
            ? ''
            : words.settleCells(
                wantedEach,
                shareOut(wantedEach, perCard),
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
            <Action key={side} calls={pageApi.addCard} onPress={() => make(side)}>
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
