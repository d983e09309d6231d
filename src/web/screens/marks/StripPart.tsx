import type { KeptStock } from '../../../core/book/keptStock.ts';
import { rungLetter } from '../../../core/card/rungLetter.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import type { MarkLimits } from '../../../core/marking/markLimits.ts';
import {
  markOfStep,
  markStrip,
  markStripDrawing,
  stripKinds,
} from '../../../core/marking/markStrip.ts';
import type { ShadesOfStrip, UnkeptMarkTest } from '../../../core/marking/markTest.ts';
import { isMachineFileKind, machineFiles, rampFileKinds } from '../../../formats/machineFiles.ts';
import { usualSteps } from '../../../formats/markStripRequestFile.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { marksText as words, markStripText } from '../../../words/texts.ts';
import { DownloadLink } from '../../parts/action/DownloadLink.tsx';
import { Choice } from '../../parts/choice/Choice.tsx';
import { KeepTest } from '../../parts/earlier/KeepTest.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { callOrThrow } from '../../state/call.ts';
import { EvenShadesPart } from './EvenShadesPart.tsx';
import { shadesAsKept, shadesToKeep, type MarksDraft } from './marksDraft.ts';
import { markStripAddress } from './markStripAddress.ts';
import { StripPicture } from './StripPicture.tsx';
import { markTestsKey } from './useMarkTests.ts';

export interface StripPartProps {
  readonly draft: MarksDraft;
  readonly lineSpacingMm: number;
  readonly cut: Setting;
  readonly stock: KeptStock;
  readonly machineId: string | undefined;
  readonly limits: MarkLimits;
  /** What is read of a strip of shades; absent where there is none. */
  readonly shades: ShadesOfStrip | undefined;
  readonly keptShades: ShadesOfStrip | undefined;
  readonly onChange: (part: Partial<MarksDraft>) => void;
}

/** A strip of shades or lines, its files, and what was seen on it in two taps. */
export const StripPart = (props: StripPartProps) => {
  const { draft, lineSpacingMm, cut, stock, machineId, limits, shades, onChange } = props;
  const { strip: kind, palest, wanted } = draft;
  const wish = { kind, steps: usualSteps, lineSpacingMm };
  const strip = markStrip(wish, cut, limits);
  const settings = strip.ok ? strip.value.settings : [];
  const chosen = wanted === undefined ? undefined : settings[wanted];
  const test: UnkeptMarkTest | undefined =
    chosen === undefined || palest === undefined || wanted === undefined
      ? undefined
      : {
          ...(machineId === undefined ? {} : { machineId }),
          ...{ cut, stock, mark: markOfStep(wish, chosen), strip: { settings, palest, wanted } },
          ...shadesToKeep(shades, markOfStep(wish, chosen)),
        };
  const tap = (label: string, value: number | undefined, from: number, to: Tapped) => (
    <Choice
      label={label}
      value={value === undefined ? undefined : rungLetter(value)}
      options={settings.slice(from).map((_, i) => {
        const letter = rungLetter(from + i);
        return { value: letter, label: letter };
      })}
      onChange={(letter) => to(settings.findIndex((_, i) => rungLetter(i) === letter))}
    />
  );
  return (
    <Section title={words.strip}>
      <p className="soft">{words.stripMore}</p>
      <Choice
        label={words.stripKind}
        hideLabel
        value={kind}
        options={stripKinds.map((value) => ({ value, label: words.stripKinds[value] }))}
        onChange={(strips) => onChange({ strip: strips, palest: undefined, wanted: undefined })}
      />
      {strip.ok ? (
        <>
          <StripPicture
            drawing={markStripDrawing(strip.value)}
            label={markStripText.about(strip.value)}
          />
          <p className="small">{markStripText.piece(strip.value)}</p>
          <div className="actions">
            {rampFileKinds.map((file) => (
              <DownloadLink
                key={file}
                href={markStripAddress(file, { wish, cut, stock, machineId })}
                fileName={`${markStripText.file}.${file}`}
              >
                {isMachineFileKind(file) ? machineFiles[file].name : words.files[file]}
              </DownloadLink>
            ))}
          </div>
          <ol className="marks-steps small">
            {markStripText.steps(strip.value).map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          {tap(words.palest, palest, 0, (step) =>
            onChange({
              palest: step,
              ...(wanted !== undefined && wanted < step ? { wanted: undefined } : {}),
            }),
          )}
          {tap(words.wanted, wanted, palest ?? 0, (step) => onChange({ wanted: step }))}
          {chosen === undefined ? null : (
            <p className="marks-found">{words.mark(markOfStep(wish, chosen))}</p>
          )}
          <div className="actions">
            <KeepTest
              words={{ keep: words.keepStrip[kind], kept: words.keptSaid }}
              test={test}
              record={(body) => callOrThrow(pageApi.recordMarkTest, { body })}
              queryKey={markTestsKey}
              onKept={() =>
                onChange({
                  ...{ palest: undefined, wanted: undefined },
                  ...(test?.shades === undefined ? {} : shadesAsKept),
                })
              }
            />
          </div>
          {kind === 'lines' || shades === undefined ? null : (
            <EvenShadesPart
              {...{ draft, shades, onChange }}
              keptShades={props.keptShades}
              beside={{ cut, stock, machine: limits.machine }}
            />
          )}
        </>
      ) : (
        <ProblemNotice tone="care" problem={strip.problem} />
      )}
    </Section>
  );
};

type Tapped = (step: number) => void;
