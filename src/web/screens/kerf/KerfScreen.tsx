import { useMemo } from 'react';
import { isSameBatch, stockOnMachine } from '../../../core/book/keptStock.ts';
import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import { combDirections, usualCombMeasure } from '../../../core/kerf/kerfComb.ts';
import { actsOfKerfCard } from '../../../core/kerf/actsOfKerfCard.ts';
import { kerfCard } from '../../../core/kerf/kerfCard.ts';
import {
  kerfAgreement,
  kerfTestSays,
  kerfTestsOf,
  type KerfSubject,
  type KerfTest,
} from '../../../core/kerf/kerfTest.ts';
import { tellKerf } from '../../../core/kerf/tellKerf.ts';
import type { Machine } from '../../../core/machine/machine.ts';
import { namedMaterial } from '../../../core/stock/namedMaterial.ts';
import { glowsOn } from '../../../core/stock/glowsOn.ts';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import { stripChangeover } from '../../../core/study/stripChangeover.ts';
import type { Study } from '../../../core/study/study.ts';
import { bookText, kerfText as words, shellText } from '../../../words/texts.ts';
import { ActionLink } from '../../parts/action/Action.tsx';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { OnlyIfCut } from '../../parts/material/OnlyIfCut.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { pageAt, pages } from '../../state/pages.ts';
import { useBookEntry } from '../../state/queries.ts';
import { useAnswer } from '../../state/useAnswer.ts';
import { useDraft } from '../../state/useDraft.ts';
import { useStudy } from '../../state/workshop.tsx';
import { CombPart } from './CombPart.tsx';
import { CombReading } from './CombReading.tsx';
import { GrowOwn } from './GrowOwn.tsx';
import { KeepKerf, KeptKerfs } from './KeepKerf.tsx';
import { kerfCardAddress } from './kerfCardAddress.ts';
import {
  combsIn,
  emptyKerfDraft,
  kerfTestFrom,
  readKerfDraft,
  slotsIn,
  stockOfBatch,
  type KerfDraft,
} from './kerfDraft.ts';
import { KerfFound } from './KerfFound.tsx';
import { SlotPart } from './SlotPart.tsx';
import { useKerfTests } from './useKerfTests.ts';
import './kerf.css';

export type KerfScreenProps =
  /** Of the sheet's answer. */
  | { readonly studyId: string }
  /** Of a kept setting. */
  | { readonly entryId: string };

/** A comb, what was measured on it, the kerf, one's own drawing, slots for joints. */
export const KerfScreen = (props: KerfScreenProps) =>
  'studyId' in props ? <OfStudy {...props} /> : <OfKept {...props} />;

const OfKept = ({ entryId }: { readonly entryId: string }) => {
  const { data, isPending } = useBookEntry(entryId);
  return data === undefined ? <Waits isPending={isPending} /> : <OfEntry entry={data.entry} />;
};

const OfEntry = ({ entry }: { readonly entry: ProvenSetting }) => {
  const { id, setting, holdsFor, isExample, cameFrom } = entry;
  const { study, loading } = useStudy(cameFrom.studyId);
  if (study === undefined && loading) return <Waits isPending />;
  return (
    <Kerf
      subject={{ setting, ...stockOnMachine(holdsFor) }}
      machine={study?.machine}
      isExample={isExample}
      name={id}
      back={pageAt(pages.entry, { id })}
      studyId={cameFrom.studyId}
    />
  );
};

const OfStudy = ({ studyId }: { readonly studyId: string }) => {
  const { study, loading } = useStudy(studyId);
  if (study === undefined) return <Waits isPending={loading} />;
  return <OfAnswer study={study} />;
};

const OfAnswer = ({ study }: { readonly study: Study }) => {
  const { answer } = useAnswer(study, { from: 'any-sheet' });
  const back = pageAt(pages.study, { id: study.id });
  const setting = answer?.standing.run;
  if (setting === undefined)
    return (
      <Page title={words.title}>
        <p>{answer === undefined ? shellText.loading : words.noSetting}</p>
        <div className="actions">
          <ActionLink href={back}>{words.back}</ActionLink>
        </div>
      </Page>
    );
  const { stock, machineId, machine, isExample } = study;
  const { batch, sheet, nominalThicknessMm } = stock;
  return (
    <Kerf
      subject={{
        setting,
        stock: {
          ...namedMaterial(stock),
          nominalThicknessMm,
          measuredThicknessMm: stockThicknessMm(stock),
          ...(batch === undefined ? {} : { batch }),
          ...(sheet === undefined ? {} : { sheet }),
        },
        machineId,
      }}
      machine={machine}
      isExample={isExample}
      name={study.id}
      back={back}
      studyId={study.id}
    />
  );
};

const Waits = ({ isPending }: { readonly isPending: boolean }) => (
  <Page title={words.title}>
    <p>{isPending ? shellText.loading : shellText.notFoundMore}</p>
  </Page>
);

interface KerfProps {
  readonly subject: KerfSubject;
  /** Absent: nobody has described it, or its sheet is gone. */
  readonly machine: Machine | undefined;
  readonly isExample: boolean;
  readonly name: string;
  readonly back: string;
  readonly studyId: string;
}

const unknownMachine: Machine = { maxPowerPct: 100, speedRangeMmPerS: [0.1, 2000] };

const Kerf = ({ subject, machine = unknownMachine, isExample, name, back, studyId }: KerfProps) => {
  const { setting, stock } = subject;
  const { data, isPending, refetch } = useKerfTests();
  const tests = useMemo(
    () => (data === undefined ? undefined : kerfTestsOf(subject, data.tests)),
    [data, subject],
  );
  const [draft, setDraft] = useDraft<KerfDraft>({
    name: `kerf.${name}`,
    initial: emptyKerfDraft,
    lasting: readKerfDraft,
  });
  const change = (part: Partial<KerfDraft>): void => setDraft({ ...draft, ...part });
  const batch = draft.batch ?? stock.batch ?? '';
  const here = stockOfBatch(stock, batch);
  const before = latestOf(tests?.filter((test) => isSameBatch(test.stock, here) !== true));
  const places = draft.places ?? (before === undefined ? 4 : 1);
  const directions = draft.directions ?? (before === undefined ? 'both' : 'across');
  const thicknessMm = stock.measuredThicknessMm ?? stock.nominalThicknessMm;
  const tongueMm = draft.tongueMm ?? thicknessMm;
  const cardOf = (wish: Parameters<typeof kerfCard>[0]['wish'], mm: number) =>
    kerfCard({
      wish,
      setting,
      ...(draft.scoring === undefined ? {} : { scoring: draft.scoring }),
      thicknessMm: mm,
      machine,
      believed: stripChangeover({ material: stock.material, thicknessMm: mm }, machine),
    });
  const comb = cardOf(
    {
      kind: 'comb',
      pieceMm: draft.pieceMm,
      places,
      directions: directions === 'both' ? combDirections : [directions],
    },
    thicknessMm,
  );
  const placed = comb.ok && comb.value.sheet.kind === 'comb' ? comb.value.sheet.combs : [];
  const combs = combsIn(draft, placed);
  const measured = combs.length === 0 ? undefined : tellKerf({ combs, measure: usualCombMeasure });
  const kerf = measured?.ok === true ? measured.value.kerf : undefined;
  // In hundredths, so that slots do not move with every reading.
  const known = (kerf ?? latestOf(tests)?.kerf)?.kerfMm;
  const kerfMm = known === undefined ? undefined : Number(known.toFixed(2));
  const slotCard = cardOf({ kind: 'slots', ...(kerfMm === undefined ? {} : { kerfMm }) }, tongueMm);
  const widths =
    slotCard.ok && slotCard.value.sheet.kind === 'slots'
      ? slotCard.value.sheet.slots.map(({ drawnMm }) => drawnMm)
      : [];
  const slots = slotsIn(draft, widths);
  const joined =
    slots.length < 2
      ? undefined
      : tellKerf({
          combs: kerf === undefined ? [] : combs,
          measure: usualCombMeasure,
          slots,
          tongueMm,
        });
  const test = kerfTestFrom(subject, {
    combs: kerf === undefined ? [] : combs,
    slots,
    tongueMm,
    batch,
  });
  const acts = actsOfKerfCard({ setting, thicknessMm }, glowsOn(stock.material));
  return (
    <Page
      title={words.title}
      lead={words.lead(
        setting,
        bookText.stock(stock.material, stock.nominalThicknessMm, stock.measuredThicknessMm),
      )}
    >
      <OnlyIfCut stock={stock} studyId={studyId}>
        <Invented is={isExample} />
        <Cautions acts={acts} />
        <CombPart
          {...{ name, draft, places, directions, before }}
          card={comb}
          onChange={change}
          fileAddress={(kind) => (comb.ok ? kerfCardAddress(kind, comb.value, subject) : '')}
        />
        <CombReading combs={placed} draft={draft} onChange={change} />
        <KerfFound
          told={measured}
          agreement={
            before === undefined || kerf === undefined
              ? undefined
              : kerfAgreement(before.kerf, kerf)
          }
        />
        <GrowOwn kerfMm={known} />
        <SlotPart
          {...{ draft, tongueMm }}
          card={slotCard}
          onChange={change}
          fileAddress={(kind) =>
            slotCard.ok ? kerfCardAddress(kind, slotCard.value, subject, kerfMm) : ''
          }
          joints={joined?.ok === true ? (joined.value.joints ?? []) : []}
          remarks={
            joined === undefined
              ? []
              : joined.ok
                ? joined.value.remarks.filter(({ code }) => code.startsWith('joint-'))
                : [joined.problem]
          }
        />
        <Section title={words.keep}>
          <TextLine
            label={words.batch}
            value={batch}
            onChange={(typed) => change({ batch: typed })}
          />
          <KeepKerf
            test={test}
            onKept={() => change({ strips: {}, bars: {}, fits: {}, times: 1 })}
          />
          {test === undefined ? null : (
            <SureAction ask={words.startOverAsk} onPress={() => setDraft(emptyKerfDraft)}>
              {words.startOver}
            </SureAction>
          )}
        </Section>
        <KeptKerfs tests={tests} isPending={isPending} onAgain={() => void refetch()} />
      </OnlyIfCut>
      <div className="actions">
        <ActionLink href={back}>{words.back}</ActionLink>
      </div>
    </Page>
  );
};

/** The latest that tells a kerf. */
const latestOf = (tests: readonly KerfTest[] | undefined) => {
  for (const test of tests ?? []) {
    const told = kerfTestSays(test);
    if (told.ok && told.value.kerf !== undefined)
      return { kerf: told.value.kerf, batch: test.stock.batch };
  }
  return undefined;
};
