import { pageApi } from '../../../wire/pageApi.ts';
import { useMay } from '../../state/role.ts';
import { machineFileEndings } from '../../../formats/machineFiles.ts';
import { useCallback, useEffect, useMemo } from 'react';
import type { Setting } from '../../../core/machine/setting.ts';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import { partLengthOf } from '../../../core/study/promiseOf.ts';
import type { Study } from '../../../core/study/study.ts';
import { toCutStudy } from '../../../core/study/toCutStudy.ts';
import { refuseBySize } from '../../../formats/drawingSize.ts';
import { proofText as words, shellText, studyText } from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { FilePick } from '../../parts/file/FilePick.tsx';
import { Notice, ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { Page } from '../../parts/page/Page.tsx';
import { useBookEntry } from '../../state/queries.ts';
import { useAnswer } from '../../state/useAnswer.ts';
import { useDraft } from '../../state/useDraft.ts';
import { useProof } from '../../state/useProof.ts';
import { withOptional } from '../../state/withOptional.ts';
import { useStudy, useWorkshop } from '../../state/workshop.tsx';
import { ProofResult } from './ProofResult.tsx';
import { ProofSetting } from './ProofSetting.tsx';
import { ProvingBar } from './ProvingBar.tsx';
import { spokenOf, wholeSetting, type SpokenProof } from './spokenProof.ts';
import { pageAt, pages } from '../../state/pages.ts';
import './proof.css';

const acts = ['unattended', 'fire', 'always'] as const;

export type ProofScreenProps =
  /** The study's answer is proven, one step surer to begin with. */
  | { readonly studyId: string }
  /** A kept setting is, by the sheet that it came from. */
  | { readonly entryId: string };

/** Proves a setting on a drawing. */
export const ProofScreen = (props: ProofScreenProps) =>
  'studyId' in props ? <OfStudy {...props} /> : <OfKept {...props} />;

const OfStudy = ({ studyId }: { readonly studyId: string }) => {
  const { study, loading } = useStudy(studyId);
  if (study === undefined) return <Missing loading={loading} />;
  return <Prove study={study} kept={undefined} back={pageAt(pages.study, { id: studyId })} />;
};

const OfKept = ({ entryId }: { readonly entryId: string }) => {
  const { data, isPending } = useBookEntry(entryId);
  if (data === undefined) return <Missing loading={isPending} />;
  const { entry } = data;
  return <OfEntry entryId={entryId} studyId={entry.cameFrom.studyId} setting={entry.setting} />;
};

const OfEntry = (props: { entryId: string; studyId: string; setting: Setting }) => {
  const { study, loading } = useStudy(props.studyId);
  if (study === undefined) return <Missing loading={loading} />;
  return (
    <Prove study={study} kept={props.setting} back={pageAt(pages.entry, { id: props.entryId })} />
  );
};

const Missing = ({ loading }: { readonly loading: boolean }) =>
  loading ? (
    <p className="page-wait">{shellText.loading}</p>
  ) : (
    <Page title={words.title} lead={words.entryGone}>
      <div className="actions">
        <ActionLink href={pages.start}>{shellText.toStart}</ActionLink>
      </div>
    </Page>
  );

interface Drawing {
  readonly name: string;
  readonly text: string;
}

/** What was picked and typed. */
interface Draft {
  readonly drawing?: Drawing;
  readonly typed?: SpokenProof;
  readonly leaveOut: readonly string[];
}

interface ProveProps {
  readonly study: Study;
  /** The kept setting that is proven; undefined: the study's answer is. */
  readonly kept: Setting | undefined;
  readonly back: string;
}

const longestOf = (kinds: readonly { readonly cutMm: number }[] | undefined): readonly number[] =>
  (kinds ?? []).map(({ cutMm }) => Math.round(cutMm));

const Prove = ({ study, kept, back }: ProveProps) => {
  const { store } = useWorkshop();
  const may = useMay();
  const mayPromise = may(pageApi.changeStudy);
  const { answer, earlier } = useAnswer(study, { from: 'any-sheet' });
  const [draft, setDraft] = useDraft<Draft>({
    name: `prove.${back}`,
    initial: { leaveOut: [] },
    of: kept,
  });
  const change = (part: Partial<Draft>): void => setDraft({ ...draft, ...part });
  const { drawing, typed, leaveOut } = draft;
  const proposed = kept ?? answer?.standing.run;
  const meant = typed === undefined ? proposed : wholeSetting(typed, proposed);
  // The same setting is the same question, however often the answer is reckoned anew.
  const key = meant === undefined ? '' : JSON.stringify(meant);
  const { sheets } = earlier;
  const question = useMemo(
    () =>
      drawing === undefined || key === ''
        ? undefined
        : {
            name: drawing.name,
            text: drawing.text,
            study: toCutStudy(study),
            earlier: sheets,
            setting: JSON.parse(key) as Setting,
            leaveOut,
          },
    [drawing, key, study, sheets, leaveOut],
  );
  const { stage, proven, isStopped, broke, stop, again } = useProof(question);
  const proof = proven?.answer;
  // While another drawing is worked on, what stands there is of the one before, and is called so.
  const isOfThis = proven !== undefined && proven.to.text === drawing?.text;
  const changeStart = (startMmPerS: number | undefined): void => {
    store.make({
      kind: 'describe-machine',
      machineId: study.machineId,
      addedAt: new Date().toISOString(),
      machine: withOptional(study.machine, 'powerRampStartMmPerS', startMmPerS),
    });
  };
  const tellLength = useCallback(
    (partLengthMm: number): void =>
      store.make({
        kind: 'head',
        studyId: study.id,
        head: { promise: { ...study.promise, partLengthMm } },
      }),
    [store, study.id, study.promise],
  );
  const longest = proof?.ok === true ? Math.max(0, ...longestOf(proof.value.promise?.kinds)) : 0;
  const isLengthKnown = partLengthOf(study) !== undefined;
  // Nobody said how long the part is, and the drawing does: the longest of its parts is the hardest to promise.
  useEffect(() => {
    if (longest > 0 && !isLengthKnown && mayPromise) tellLength(longest);
  }, [longest, isLengthKnown, mayPromise, tellLength]);
  const { material } = study.stock;
  const stock = studyText.stock(
    material,
    stockThicknessMm(study.stock),
    study.stock.thicknessReadingsMm.length > 0,
  );
  return (
    <Page title={words.title} lead={words.lead(stock)} width="wide">
      <Invented is={study.isExample} />
      <div className="proof-ask">
        <FilePick
          label={drawing === undefined ? words.pick : words.pickMore}
          accept={machineFileEndings}
          refuse={refuseBySize}
          onText={(name, text) => {
            change({ leaveOut: [], drawing: { name, text } });
          }}
        />
        {meant === undefined && typed === undefined && answer === undefined ? null : (
          <ProofSetting
            spoken={typed ?? spokenOf(proposed)}
            onChange={(spoken) => change({ typed: spoken })}
            startMmPerS={study.machine.powerRampStartMmPerS}
            onStart={may(pageApi.describeMachine) ? changeStart : undefined}
          />
        )}
      </div>
      {meant === undefined && drawing !== undefined ? (
        <Notice tone="care">
          <p>{words.noSetting}</p>
        </Notice>
      ) : null}
      <ProvingBar stage={stage} onStop={stop} />
      {broke === undefined ? null : (
        <Notice tone="stop">
          <p>{words.broke(broke)}</p>
        </Notice>
      )}
      {isStopped && drawing !== undefined ? (
        <Notice tone="care">
          <p>
            {words.stopped(drawing.name)}{' '}
            {proven?.answer.ok === true
              ? words.stoppedShows(proven.to.name, proven.answer.value.setting)
              : ''}
          </p>
          <div className="actions">
            <Action onPress={again}>{words.again}</Action>
          </div>
        </Notice>
      ) : null}
      {proven === undefined || proof === undefined || drawing === undefined ? null : proof.ok ? (
        <ProofResult
          name={proven.to.name}
          proof={proof.value}
          isBehind={stage !== undefined || isStopped}
          leaveOut={isOfThis ? leaveOut : proven.to.leaveOut}
          onCut={isOfThis ? (next) => change({ leaveOut: next }) : undefined}
          promisedMm={partLengthOf(study)}
          onLength={tellLength}
          cornersCardHref={pageAt(pages.newCard, { id: study.id })}
          onCorners={(minPowerPct) => {
            change({ typed: { ...spokenOf(proof.value.setting), minPowerPct } });
          }}
        />
      ) : (
        <ProblemNotice problem={proof.problem} tone="stop" />
      )}
      <Cautions acts={acts} brief />
      <div className="actions">
        <ActionLink href={back}>{words.back}</ActionLink>
        {proof?.ok === true ? <Action onPress={() => print()}>{words.print}</Action> : null}
      </div>
    </Page>
  );
};
