import { useMemo } from 'react';
import { useSearch } from 'wouter';
import { conditionsOf, piecesIn } from '../../../core/compare/pieces.ts';
import type { Study } from '../../../core/study/study.ts';
import { compareText as words, shellText } from '../../../words/texts.ts';
import { ActionLink } from '../../parts/action/Action.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { useHome } from '../../state/queries.ts';
import { useCall } from '../../state/useCall.ts';
import { useDraft } from '../../state/useDraft.ts';
import { useStudy } from '../../state/workshop.tsx';
import { CompareSays } from './CompareSays.tsx';
import { DraftForm } from './DraftForm.tsx';
import { PiecesForm } from './PiecesForm.tsx';
import { Notice, ProblemNotice } from '../../parts/notice/Notice.tsx';
import { emptyDraft, studyOfSide, wishOf, type CompareDraft } from './sides.ts';
import { pages } from '../../state/pages.ts';
import './compare.css';

/** Two conditions beside each other: `?sheet=` names the sheet whose cards come first, else the one on the bed. */
export const CompareScreen = () => {
  const asked = new URLSearchParams(useSearch()).get('sheet');
  const { data: home, isPending } = useHome();
  const sheet = asked ?? home?.latest?.study.id;
  return (
    <Page title={words.title} lead={words.lead}>
      {sheet !== undefined ? (
        <OfTheSheet key={sheet} studyId={sheet} />
      ) : isPending ? (
        <p>{shellText.loading}</p>
      ) : (
        <>
          <p>{words.noSheet}</p>
          <div className="actions">
            <ActionLink href={pages.newSheet}>{words.newSheet}</ActionLink>
          </div>
        </>
      )}
    </Page>
  );
};

const OfTheSheet = ({ studyId }: { readonly studyId: string }) => {
  const { study, loading } = useStudy(studyId);
  if (study !== undefined) return <Compare study={study} />;
  return <p>{loading ? shellText.loading : shellText.notFoundMore}</p>;
};

const Compare = ({ study }: { readonly study: Study }) => {
  const [draft, setDraft] = useDraft<CompareDraft>({
    name: `compare.${study.id}`,
    initial: emptyDraft,
  });
  const [otherId, setOtherId] = useDraft<string | undefined>({
    name: `compare.other.${study.id}`,
    initial: undefined,
  });
  const { study: second } = useStudy(otherId ?? study.id);
  const studies = useMemo(
    () => (second === undefined || second.id === study.id ? [study] : [study, second]),
    [study, second],
  );
  const pieces = useMemo(() => studies.flatMap(piecesIn), [studies]);
  const wish = useMemo(() => wishOf(pieces, draft), [pieces, draft]);
  const two = useMemo(
    () => (wish === undefined ? undefined : conditionsOf(studies, wish)),
    [studies, wish],
  );
  const question = two?.ok === true ? two.value : undefined;
  const { answered, isBusy, broke } = useCall('compare', question);
  const comparison = question === undefined || broke !== undefined ? undefined : answered?.answer;
  return (
    <>
      <Invented is={studies.some(({ isExample }) => isExample)} />
      <PiecesForm
        study={study}
        pieces={pieces}
        draft={draft}
        onChange={setDraft}
        otherId={otherId}
        onOther={setOtherId}
      />
      <DraftForm pieces={pieces} draft={draft} comparison={comparison} onChange={setDraft} />
      {two === undefined ? (
        <Section title={words.answer}>
          <p className="soft">{words.choose}</p>
        </Section>
      ) : two.ok ? (
        <div aria-busy={isBusy}>
          {broke === undefined ? null : <Notice tone="stop">{words.broke(broke)}</Notice>}
          {comparison === undefined ? (
            broke === undefined ? (
              <p>{words.calculating}</p>
            ) : null
          ) : comparison.ok ? (
            <CompareSays
              comparison={comparison.value}
              draft={draft}
              studyOf={(side) => studyOfSide(wish, side, study.id)}
            />
          ) : (
            <ProblemNotice problem={comparison.problem} tone="stop" />
          )}
        </div>
      ) : (
        <ProblemNotice problem={two.problem} tone="stop" />
      )}
    </>
  );
};
