import { useMemo } from 'react';
import type { Study } from '../../../core/study/study.ts';
import { cornersText as words, shellText } from '../../../words/texts.ts';
import { ActionLink } from '../../parts/action/Action.tsx';
import { Notice, ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { Page } from '../../parts/page/Page.tsx';
import { useHome } from '../../state/queries.ts';
import { useAnswer } from '../../state/useAnswer.ts';
import { useDraft } from '../../state/useDraft.ts';
import { useStudy } from '../../state/workshop.tsx';
import { BedPicture } from './BedPicture.tsx';
import { CornersFiles } from './CornersFiles.tsx';
import { CornersForm } from './CornersForm.tsx';
import { CornersReading } from './CornersReading.tsx';
import { cornersJob, scatterOf, usualCornersWish } from './cornersJob.ts';
import { EarlierCorners } from './EarlierCorners.tsx';
import { pages } from '../../state/pages.ts';
import './corners.css';

/** Does the machine cut alike all over its bed? */
export const CornersScreen = () => {
  const { data: home, isPending } = useHome();
  if (isPending) return <p className="page-wait">{shellText.loading}</p>;
  const study = home?.latest?.study;
  return (
    <Page title={words.title} lead={words.lead}>
      {study === undefined ? (
        <>
          <p>{words.noSheet}</p>
          <div className="actions">
            <ActionLink href={pages.newSheet}>{words.newSheet}</ActionLink>
          </div>
        </>
      ) : (
        <OfTheSheet studyId={study.id} />
      )}
    </Page>
  );
};

const OfTheSheet = ({ studyId }: { readonly studyId: string }) => {
  const { study } = useStudy(studyId);
  return study === undefined ? <p>{shellText.loading}</p> : <Job study={study} />;
};

const Job = ({ study }: { readonly study: Study }) => {
  const [wish, setWish] = useDraft({
    name: `corners.${study.id}`,
    initial: usualCornersWish(study),
  });
  const { answer } = useAnswer(study, { from: 'any-sheet' });
  const { setting, job } = useMemo(() => cornersJob(study, answer, wish), [study, answer, wish]);
  const about = useMemo(
    () => ({
      machineId: study.machineId,
      bed: wish.bed,
      setting,
      scatter: scatterOf(answer),
    }),
    [study.machineId, wish.bed, setting, answer],
  );
  return (
    <>
      <Invented is={study.isExample} />
      {answer === undefined ? (
        <Notice tone="care">
          <p>{words.noCard}</p>
        </Notice>
      ) : null}
      <CornersForm wish={wish} setting={setting} onChange={setWish} />
      {job.ok ? (
        <>
          <BedPicture job={job.value} />
          <CornersFiles drawing={job.value.drawing} machine={study.machine} />
          <CornersReading
            key={wish.cellsEach}
            name={study.id}
            cells={job.value.cells}
            about={about}
            isStudied={answer !== undefined}
          />
        </>
      ) : (
        <ProblemNotice problem={job.problem} tone="stop" />
      )}
      <EarlierCorners machineId={study.machineId} />
    </>
  );
};
