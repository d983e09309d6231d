import { rungLetter } from '../../../core/card/rungLetter.ts';
import { settingKey, type Setting } from '../../../core/machine/setting.ts';
import { evenShades, toneReadings } from '../../../core/marking/evenShades.ts';
import type { MarkLimits } from '../../../core/marking/markLimits.ts';
import type { MarkStrip } from '../../../core/marking/markStrip.ts';
import { marksText as words, settingWords } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Choice } from '../../parts/choice/Choice.tsx';
import { More } from '../../parts/more/More.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Scrolls } from '../../parts/page/Scrolls.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readLightness } from '../../parts/quantity/readers.ts';
import { Said } from '../../parts/said/Said.tsx';
import type { MarksDraft } from './marksDraft.ts';
import { TonePicture } from './TonePicture.tsx';

interface EvenShadesPartProps {
  readonly draft: MarksDraft;
  readonly strip: MarkStrip;
  readonly cut: Setting;
  readonly limits: MarkLimits;
  readonly onChange: (part: Partial<MarksDraft>) => void;
}

const counts = ['3', '4', '5', '6', '8'] as const;
const usualCount = 5;

/** How light the shades of a strip came out, the curve through them, and settings for shades that lie evenly apart. */
export const EvenShadesPart = ({ draft, strip, cut, limits, onChange }: EvenShadesPartProps) => {
  const { settings, lineSpacingMm } = strip;
  const { readBy = 'meter', shades: count = usualCount } = draft;
  const of = [lineSpacingMm, ...settings.map(settingKey)].join(' ');
  // What was read on another strip says nothing of this one.
  const read = draft.lightness?.of === of ? draft.lightness.read : [];
  const lightness = settings.map((_, i) => read[i] ?? undefined);
  const found = evenShades(strip, { lightness, by: readBy, count }, cut, limits);
  const takenKey = draft.engrave === undefined ? undefined : settingKey(draft.engrave);
  const isTaken =
    found.ok &&
    draft.kind === 'engrave' &&
    found.value.shades.some(({ setting }) => settingKey(setting) === takenKey);
  return (
    <More title={words.shades}>
      <p className="soft">{words.shadesMore}</p>
      <Choice
        label={words.readBy}
        value={readBy}
        options={toneReadings.map((value) => ({ value, label: words.readings[value] }))}
        onChange={(by) => onChange({ readBy: by })}
      />
      <p className="small soft">{words.readingsMore[readBy]}</p>
      <div className="marks-lightness" key={of}>
        {settings.map((_, i) => (
          <QuantityField
            key={rungLetter(i)}
            label={words.lightness(rungLetter(i))}
            value={lightness[i]}
            show={String}
            parse={readLightness}
            optional
            onChange={(seen) =>
              onChange({
                lightness: {
                  of,
                  read: lightness.map((was, k) => (k === i ? seen : was) ?? null),
                },
              })
            }
          />
        ))}
      </div>
      <Choice
        label={words.shadesWanted}
        value={String(count)}
        options={counts.map((value) => ({ value, label: value }))}
        onChange={(chosen) => onChange({ shades: Number(chosen) })}
      />
      {found.ok ? (
        <>
          <TonePicture found={found.value} />
          <Scrolls label={words.shadesFound}>
            <table className="marks-shades figure-text">
              <thead>
                <tr>
                  <th scope="col">{words.shadeColumns.shade}</th>
                  <th scope="col">{words.shadeColumns.lightness}</th>
                  <th scope="col">{words.shadeColumns.setting}</th>
                </tr>
              </thead>
              <tbody>
                {found.value.shades.map((shade, i) => (
                  <tr key={i}>
                    <th scope="row">
                      <Action
                        kind="quiet"
                        label={words.take(i + 1)}
                        onPress={() =>
                          onChange({ kind: 'engrave', engrave: shade.setting, lineSpacingMm })
                        }
                      >
                        {String(i + 1)}
                      </Action>
                    </th>
                    <td>{words.tone(shade)}</td>
                    <td>{settingWords(shade.setting)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Scrolls>
          <p className="small soft">{words.toneSure}</p>
          {isTaken ? <Said what="done">{words.taken}</Said> : null}
        </>
      ) : lightness.every((seen) => seen === undefined) ? null : (
        <ProblemNotice tone="care" problem={found.problem} />
      )}
    </More>
  );
};
