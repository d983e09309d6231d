import { encode } from 'uqr';
import { actsOfKept } from '../../../core/book/actsOfKept.ts';
import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import { markKinds } from '../../../core/marking/mark.ts';
import { bookText as words, marksText, shellText } from '../../../words/texts.ts';
import { cautionLines } from '../../../words/cautionLines.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { CodePicture } from '../../parts/code/CodePicture.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { OnlyIfCut } from '../../parts/material/OnlyIfCut.tsx';
import { Page } from '../../parts/page/Page.tsx';
import {
  promiseOfStanding,
  StandingMark,
  StandingRun,
} from '../../parts/standing/StandingSays.tsx';
import { useBookEntry, usePairing } from '../../state/queries.ts';
import { workshopReach } from '../../state/reach.ts';
import { usePageStoreState } from '../../state/workshop.tsx';
import { useKeptMarks } from '../marks/useKeptMarks.ts';
import { OnlyByAir } from './OnlyByAir.tsx';
import { pageAt, pages } from '../../state/pages.ts';
import './label.css';

/** A label for the shelf: the setting, what it holds for, and a code that opens the entry. */
export const LabelScreen = ({ id }: { readonly id: string }) => {
  const { sending } = usePageStoreState();
  // Straight from the button that keeps it: not asked for before it was sent.
  const { data, isError } = useBookEntry(id, sending !== 'sending');
  const { data: pairing } = usePairing();
  if (data === undefined)
    return <p className="page-wait">{isError ? shellText.notFoundMore : shellText.loading}</p>;
  const { entry, standing } = data;
  const { material, nominalThicknessMm, measuredThicknessMm, batch } = entry.holdsFor;
  const address = addressFor(entry.code, pairing?.invitation?.addresses);
  return (
    <Page title={words.label} lead={words.labelLead}>
      <OnlyIfCut stock={entry.holdsFor} studyId={entry.cameFrom.studyId}>
        <div className="label">
          {address === undefined ? null : (
            <CodePicture matrix={encode(address).data} label={words.labelCode(entry.code)} />
          )}
          <div className="label-words">
            <Invented is={entry.isExample} />
            <p className="label-stock">
              {words.stock(material, nominalThicknessMm, measuredThicknessMm)}
              {batch === undefined ? '' : `, ${words.batch(batch)}`}
            </p>
            <p className="label-setting">
              <StandingRun standing={standing} kept={entry.setting} />
            </p>
            <OnlyByAir found={data} />
            <p>
              <StandingMark standing={standing} />
            </p>
            <p>
              {promiseOfStanding(standing, entry.surePct)} ·{' '}
              {words.partLength(standing.promise.partLengthMm)}
            </p>
            <LabelMarks holdsFor={entry.holdsFor} />
            <p className="small">{words.labelCare}</p>
            {cautionLines(actsOfKept(entry, standing.run)).map((line) => (
              <p key={line} className="small">
                <strong>{line}</strong>
              </p>
            ))}
            <p className="book-code figure-text">{entry.code}</p>
          </div>
        </div>
        <div className="actions label-screen-only">
          <Action kind="strong" onPress={() => print()}>
            {words.print}
          </Action>
          <ActionLink href={pageAt(pages.entry, { id: entry.id })}>{words.openEntry}</ActionLink>
        </div>
      </OnlyIfCut>
    </Page>
  );
};

/** The marks that are kept of the sheet, a line each. */
const LabelMarks = ({ holdsFor }: Pick<ProvenSetting, 'holdsFor'>) => {
  const marks = useKeptMarks(holdsFor);
  return markKinds.map((kind) => {
    const kept = marks[kind];
    return kept === undefined ? null : (
      <p key={kind} className="small">
        {marksText.kinds[kind]}:{' '}
        {kept.beyond === undefined ? marksText.mark(kept.test.mark) : marksText.notAnyMore}
      </p>
    );
  });
};

/**
 * Where a phone finds the entry: by the workshop's own network if phones are let in, else as this page was found. Nowhere, where
 * this page was opened from a disk: there its code finds it in the book.
 */
const addressFor = (code: string, addresses: readonly string[] | undefined): string | undefined => {
  if (!workshopReach().isServed)
    return location.protocol === 'file:'
      ? undefined
      : `${location.origin}${location.pathname}#${pageAt(pages.entry, { id: code })}`;
  const place = (addresses?.[0] ?? location.origin).replace(/\/$/, '');
  return `${place}${pageAt(pages.entry, { id: code })}`;
};
