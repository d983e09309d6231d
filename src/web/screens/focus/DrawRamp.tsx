import { isMachineFileKind, machineFiles, rampFileKinds } from '../../../formats/machineFiles.ts';
import type { RampCard } from '../../../core/card/rampCard.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import type { Outcome } from '../../../core/problem.ts';
import type { NamedMaterial } from '../../../core/stock/namedMaterial.ts';
import type { Study } from '../../../core/study/study.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { addressOf } from '../../../wire/route.ts';
import { lengthWords, rampSheetText as sheet, focusText as words } from '../../../words/texts.ts';
import { DownloadLink } from '../../parts/action/DownloadLink.tsx';
import { MaterialField, useWorkable } from '../../parts/material/MaterialField.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { unitsInAddress } from '../../state/units.ts';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readThickness } from '../../parts/quantity/readers.ts';
import { SettingField } from '../../parts/quantity/SettingField.tsx';

/** What is drawn on. */
interface RampStrip {
  readonly named: NamedMaterial;
  readonly thicknessMm: number;
}

export interface DrawRampProps {
  readonly card: Outcome<RampCard>;
  readonly setting: Setting;
  readonly study: Study | undefined;
  readonly strip: RampStrip;
  readonly onNamed: (named: NamedMaterial) => void;
  readonly onThickness: (thicknessMm: number) => void;
  readonly onSetting: (setting: { powerPct: number; speedMmPerS: number }) => void;
}

/** What the strip is of, what its lines are drawn with, the files, and what is done at the machine. */
export const DrawRamp = ({
  card,
  setting,
  study,
  strip,
  onNamed,
  onThickness,
  onSetting,
}: DrawRampProps) => {
  const { named, thicknessMm } = strip;
  const workable = useWorkable(named);
  return (
    <Section title={words.draw}>
      <MaterialField
        label={words.material}
        hint={words.materialHint}
        value={named}
        onChange={onNamed}
      />
      <QuantityField
        label={words.stripThickness}
        value={thicknessMm}
        show={lengthWords}
        parse={readThickness}
        onChange={(mm) => {
          if (mm !== undefined && mm > 0) onThickness(mm);
        }}
      />
      <SettingField
        name="ramp"
        label={words.line}
        hint={words.lineHint}
        setting={setting}
        onChange={(next) => {
          if (next !== undefined)
            onSetting({ powerPct: next.powerPct, speedMmPerS: next.speedMmPerS });
        }}
      />
      {card.ok || !ofTheLine(card.problem.code) ? null : (
        <ProblemNotice tone="stop" problem={card.problem} />
      )}
      {card.ok && workable ? (
        <>
          <div className="actions">
            {rampFileKinds.map((kind) => (
              <DownloadLink
                key={kind}
                href={fileAddress(kind, card.value, strip, study)}
                fileName={`${sheet.file}.${kind}`}
              >
                {isMachineFileKind(kind) ? machineFiles[kind].name : words.files[kind]}
              </DownloadLink>
            ))}
          </div>
          <ol className="focus-steps">
            {sheet.steps(card.value.ramp).map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          <ul className="focus-lines figure-text">
            {card.value.lines.map((line) => (
              <li key={line.letter}>{sheet.line(line)}</li>
            ))}
          </ul>
          <p className="small soft">{sheet.tryFirst}</p>
        </>
      ) : (
        <p className="soft">{words.notYet}</p>
      )}
    </Section>
  );
};

/** What is wrong with the line; what is wrong with the ramp stands by the ramp. */
const ofTheLine = (code: string): boolean =>
  code.startsWith('ramp-setting') || code.startsWith('fires-');

const fileAddress = (
  kind: string,
  { ramp, lines }: RampCard,
  { named: { material, materialKnown }, thicknessMm }: RampStrip,
  study: Study | undefined,
): string => {
  const strongest = lines[0]?.setting;
  return addressOf(
    pageApi.rampFile,
    { kind },
    {
      material: material.trim(),
      materialKnown: materialKnown === true ? 'true' : undefined,
      thicknessMm,
      ...ramp,
      powerPct: strongest?.powerPct,
      speedMmPerS: strongest?.speedMmPerS,
      studyId: study?.id,
      units: unitsInAddress(),
    },
  );
};
