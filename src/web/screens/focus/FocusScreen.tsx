import { actsOfRamp } from '../../../core/card/actsOfRamp.ts';
import { rampCard } from '../../../core/card/rampCard.ts';
import { findFocus } from '../../../core/focus/findFocus.ts';
import type { WorkshopMachine } from '../../../core/machine/workshopMachine.ts';
import { namedMaterial, type NamedMaterial } from '../../../core/stock/namedMaterial.ts';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import { stripChangeover, usualStripMm } from '../../../core/study/stripChangeover.ts';
import type { Study } from '../../../core/study/study.ts';
import { focusText as words } from '../../../words/texts.ts';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { useDraft } from '../../state/useDraft.ts';
import { MachineHere } from '../machine/MachineHere.tsx';
import { DrawRamp } from './DrawRamp.tsx';
import { EarlierFocusTests } from './EarlierFocusTests.tsx';
import {
  emptyFocusDraft,
  focusTestFrom,
  readFocusDraft,
  readingsIn,
  type FocusDraft,
} from './focusDraft.ts';
import { FocusSays } from './FocusSays.tsx';
import { KeepFocusTest } from './KeepFocusTest.tsx';
import { RampForm } from './RampForm.tsx';
import { RampReading } from './RampReading.tsx';
import './focus.css';

/** A ramp, a line up it, and from what is read off it the height at which a sheet is in focus. */
export const FocusScreen = () => (
  <Page title={words.title} lead={words.lead}>
    <MachineHere>
      {(_machine, _change, here, study) => <Focus here={here} study={study} />}
    </MachineHere>
  </Page>
);

export interface FocusProps {
  readonly here: WorkshopMachine;
  readonly study: Study | undefined;
}

/** What a line is drawn with until somebody says: a gentle guess, to be tried on scrap. Common practice, no source. */
const usual = { powerPct: 15, speedMmPerS: 40 } as const;

const Focus = ({ here, study }: FocusProps) => {
  const [draft, setDraft] = useDraft<FocusDraft>({
    name: 'focus',
    initial: emptyFocusDraft,
    lasting: readFocusDraft,
  });
  const change = (part: Partial<FocusDraft>): void => setDraft({ ...draft, ...part });
  const setting = { ...(draft.setting ?? usual), passes: 1 };
  const [named, setNamed] = useDraft<NamedMaterial>({
    name: 'ramp.material',
    initial: study === undefined ? { material: '' } : namedMaterial(study.stock),
  });
  const [thicknessMm, setThicknessMm] = useDraft({
    name: 'ramp.thickness',
    initial: study === undefined ? usualStripMm : stockThicknessMm(study.stock),
  });
  // Held to what the strip is said to be, as the files are: a line that only marks 3 mm goes through paper.
  const believed = stripChangeover({ material: named.material, thicknessMm }, here.machine);
  const card = rampCard({ ramp: draft.ramp, setting, machine: here.machine, believed });
  const readings = readingsIn(draft, card.ok ? card.value.lines : []);
  const test = focusTestFrom(draft, readings.ok ? readings.value : undefined, here.id);
  const found = test === undefined ? undefined : findFocus(test);
  return (
    <>
      <Cautions acts={actsOfRamp} />
      <RampForm draft={draft} onChange={change} />
      <DrawRamp
        card={card}
        setting={setting}
        study={study}
        strip={{ named, thicknessMm }}
        onNamed={setNamed}
        onThickness={setThicknessMm}
        onSetting={(next) => change({ setting: next })}
      />
      <RampReading
        draft={draft}
        lines={card.ok ? card.value.lines : []}
        problem={readings.ok ? undefined : readings.problem}
        onChange={change}
      />
      <Section title={words.found}>
        {found === undefined ? (
          <p className="soft">{words.nothing}</p>
        ) : found.ok ? (
          <FocusSays found={found.value} gaugeMm={draft.gaugeMm} study={study} />
        ) : (
          <ProblemNotice tone="care" problem={found.problem} />
        )}
        <KeepFocusTest
          test={found?.ok === true ? test : undefined}
          onKept={() => change({ fades: {}, widths: '' })}
        />
        {test === undefined ? null : (
          <SureAction
            ask={words.startOverAsk}
            onPress={() => change({ ...emptyFocusDraft, ramp: draft.ramp })}
          >
            {words.startOver}
          </SureAction>
        )}
      </Section>
      <EarlierFocusTests machineId={here.id} />
    </>
  );
};
