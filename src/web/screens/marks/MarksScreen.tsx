import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useMemo } from 'react';
import { beginMarks } from '../../../app/card/beginMarks.ts';
import { stockOnMachine } from '../../../core/book/keptStock.ts';
import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import { actsOfMarks } from '../../../core/marking/actsOfMarks.ts';
import { undescribedMachine, type Machine } from '../../../core/machine/machine.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import { limitsBeside, markProblem, type BesideCut } from '../../../core/marking/markLimits.ts';
import { markStrip } from '../../../core/marking/markStrip.ts';
import { marksOf, shadesKept, type UnkeptMarkTest } from '../../../core/marking/markTest.ts';
import { materialRemarks } from '../../../core/stock/acceptMaterial.ts';
import { usualSteps } from '../../../formats/markStripRequestFile.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { bookText, marksText as words, shellText } from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { KeepTest } from '../../parts/earlier/KeepTest.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { OnlyIfCut } from '../../parts/material/OnlyIfCut.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { callOrThrow } from '../../state/call.ts';
import { pageAt, pages } from '../../state/pages.ts';
import { useBookEntry } from '../../state/queries.ts';
import { useDraft } from '../../state/useDraft.ts';
import { useStudy } from '../../state/workshop.tsx';
import { SettingPhotos } from '../photo/SettingPhotos.tsx';
import { KeptMarks } from './KeptMarks.tsx';
import { MarkForm } from './MarkForm.tsx';
import {
  emptyMarksDraft,
  markIn,
  readMarksDraft,
  shadesAsKept,
  shadesIn,
  shadesToKeep,
  spacingIn,
  type MarksDraft,
  type MarksKnown,
} from './marksDraft.ts';
import { StripPart } from './StripPart.tsx';
import { markTestsKey, useMarkTests } from './useMarkTests.ts';

/** Score, engraving and tape beside a kept setting. */
export const MarksScreen = ({ entryId }: { readonly entryId: string }) => {
  const { data, isPending } = useBookEntry(entryId);
  return data === undefined ? (
    <Waits isPending={isPending} />
  ) : (
    <OfEntry entry={data.entry} cut={data.standing.run ?? data.entry.setting} />
  );
};

interface OfEntryProps {
  readonly entry: ProvenSetting;
  /** The setting that is run now. */
  readonly cut: Setting;
}

const OfEntry = (props: OfEntryProps) => {
  const { study, loading } = useStudy(props.entry.cameFrom.studyId);
  if (study === undefined && loading) return <Waits isPending />;
  return <Marks {...props} machine={study?.machine ?? undescribedMachine} />;
};

const Waits = ({ isPending }: { readonly isPending: boolean }) => (
  <Page title={words.title}>
    <p>{isPending ? shellText.loading : shellText.notFoundMore}</p>
  </Page>
);

const Marks = ({ entry, cut, machine }: OfEntryProps & { readonly machine: Machine }) => {
  const { id, holdsFor, isExample, cameFrom } = entry;
  const of = useMemo(() => stockOnMachine(holdsFor), [holdsFor]);
  const { data, isPending, refetch } = useMarkTests();
  const kept = marksOf(of, data?.tests ?? [], machine);
  const [draft, setDraft] = useDraft<MarksDraft>({
    name: `marks.${id}`,
    initial: emptyMarksDraft,
    lasting: readMarksDraft,
  });
  const change = (part: Partial<MarksDraft>): void => setDraft({ ...draft, ...part });
  const limits = limitsBeside({ cut, stock: of.stock }, machine);
  const { engrave, tape } = kept;
  const keptSpacing =
    engrave?.test.mark.kind === 'engrave' ? { lineSpacingMm: engrave.test.mark.lineSpacingMm } : {};
  const lineSpacingMm = spacingIn(draft, keptSpacing);
  const beside: BesideCut = { cut, stock: of.stock, machine };
  const begun = beginMarks({ ...beside, lineSpacingMm });
  const proposed = begun.ok ? begun.value : undefined;
  const settingOf = (kind: 'score' | 'engrave'): Setting | undefined => {
    const found = kept[kind];
    if (found?.beyond === undefined && found?.test.mark.kind === kind)
      return found.test.mark.setting;
    const begin = proposed?.[kind];
    return begin?.ok === true && begin.value.kind === kind ? begin.value.setting : undefined;
  };
  const known: MarksKnown = {
    ...keptSpacing,
    score: settingOf('score'),
    engrave: settingOf('engrave'),
    tape: tape?.test.mark.kind === 'tape' ? tape.test.mark.tape : undefined,
  };
  const mark = markIn(draft, known);
  const beyond = mark === undefined ? undefined : markProblem(mark, limits);
  const { kind } = draft;
  const guess = kind === 'tape' || mark !== undefined ? undefined : proposed?.[kind];
  const note = draft.note.trim();
  const strip = markStrip({ kind: 'shades', steps: usualSteps, lineSpacingMm }, cut, limits);
  const keptShades = strip.ok ? shadesKept(of, strip.value, data?.tests ?? []) : undefined;
  const shades = strip.ok ? shadesIn(draft, strip.value, keptShades) : undefined;
  const test: UnkeptMarkTest | undefined =
    mark === undefined || beyond !== undefined
      ? undefined
      : { ...of, cut, mark, ...(note === '' ? {} : { note }), ...shadesToKeep(shades, mark) };
  const settings = mark === undefined || mark.kind === 'tape' ? [cut] : [mark.setting];
  return (
    <Page
      title={words.title}
      lead={words.lead(
        cut,
        bookText.stock(
          holdsFor.material,
          holdsFor.nominalThicknessMm,
          holdsFor.measuredThicknessMm,
        ),
      )}
    >
      <OnlyIfCut stock={holdsFor} studyId={cameFrom.studyId}>
        <Invented is={isExample} />
        <Cautions acts={actsOfMarks(settings)} />
        {materialRemarks(holdsFor).map((remark) => (
          <ProblemNotice key={remark.code} tone="care" problem={remark} />
        ))}
        <Section title={words.kept}>
          {data === undefined ? (
            isPending ? (
              <p className="soft">{shellText.loading}</p>
            ) : (
              <div className="actions">
                <Action onPress={() => void refetch()}>{shellText.tryAgain}</Action>
              </div>
            )
          ) : Object.keys(kept).length === 0 ? (
            <p className="soft">{words.none}</p>
          ) : (
            <KeptMarks kept={kept}>
              {(one) => (
                <>
                  {one.shades === undefined ? null : (
                    <p className="small">{words.shadesSeen(one.shades)}</p>
                  )}
                  <p className="small">
                    {words.keptOn(one.at, one.stock.batch)} <RemoveMark id={one.id} />
                  </p>
                </>
              )}
            </KeptMarks>
          )}
          <SettingPhotos entryId={id} />
        </Section>
        <Section title={words.keepOne} id="keep">
          <p className="soft">{words.keepMore}</p>
          <MarkForm
            name={id}
            draft={draft}
            known={known}
            isGuess={kind !== 'tape' && kept[kind] === undefined && draft[kind] === undefined}
            onChange={change}
          />
          {beyond === undefined ? null : <ProblemNotice tone="stop" problem={beyond} />}
          {guess === undefined || guess.ok ? null : (
            <ProblemNotice tone="care" problem={guess.problem} />
          )}
          <div className="actions">
            <KeepTest
              words={{ keep: words.keep[kind], kept: words.keptSaid }}
              test={test}
              record={(body) => callOrThrow(pageApi.recordMarkTest, { body })}
              queryKey={markTestsKey}
              onKept={() =>
                change({
                  ...{ score: undefined, engrave: undefined, note: '' },
                  ...(test?.shades === undefined ? {} : shadesAsKept),
                })
              }
            />
          </div>
        </Section>
        <StripPart
          draft={draft}
          lineSpacingMm={lineSpacingMm}
          cut={cut}
          stock={of.stock}
          machineId={of.machineId}
          limits={limits}
          shades={shades}
          keptShades={keptShades}
          onChange={change}
        />
      </OnlyIfCut>
      <div className="actions">
        <ActionLink href={pageAt(pages.entry, { id })}>{words.back}</ActionLink>
      </div>
    </Page>
  );
};

const RemoveMark = ({ id }: { readonly id: string }) => {
  const cache = useQueryClient();
  const remove = useMutation({
    mutationFn: () => callOrThrow(pageApi.removeMarkTest, { params: { id } }),
    onSettled: () => cache.invalidateQueries({ queryKey: markTestsKey }),
  });
  return (
    <SureAction
      calls={pageApi.removeMarkTest}
      ask={words.removeAsk}
      onPress={() => remove.mutate()}
    >
      {words.remove}
    </SureAction>
  );
};
