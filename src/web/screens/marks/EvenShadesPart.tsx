import { useState } from 'react';
import { rungLetter } from '../../../core/card/rungLetter.ts';
import { tellEvenShades } from '../../../app/card/tellEvenShades.ts';
import { settingKey } from '../../../core/machine/setting.ts';
import { toneReadings } from '../../../core/marking/evenShades.ts';
import type { BesideCut } from '../../../core/marking/markLimits.ts';
import { shadesKey, type ShadesOfStrip } from '../../../core/marking/markTest.ts';
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
import { TonesFromPhoto } from './TonesFromPhoto.tsx';

export interface EvenShadesPartProps {
  readonly draft: MarksDraft;
  /** The strip, and what is read of it. */
  readonly shades: ShadesOfStrip;
  readonly keptShades: ShadesOfStrip | undefined;
  readonly beside: BesideCut;
  readonly onChange: (part: Partial<MarksDraft>) => void;
}

const counts = ['3', '4', '5', '6', '8'] as const;

/** How light the shades of a strip came out, the curve through them, and settings for shades that lie evenly apart. */
export const EvenShadesPart = ({
  draft,
  shades,
  keptShades,
  beside,
  onChange,
}: EvenShadesPartProps) => {
  const { settings, lineSpacingMm, by: readBy, count } = shades;
  const of = shadesKey(shades);
  // The fields are begun anew with what a photo says, and not while they are typed into.
  const [timesRead, setTimesRead] = useState(0);
  const lightness = shades.lightness.map((seen) => seen ?? undefined);
  const found = tellEvenShades({
    ...beside,
    strip: shades,
    read: { lightness, by: readBy, count },
  });
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
      {readBy === 'photo' ? (
        <TonesFromPhoto
          key={of}
          steps={settings.length}
          onRead={(read) => {
            setTimesRead(timesRead + 1);
            onChange({ lightness: { of, read: [...read] } });
          }}
        />
      ) : null}
      <div
        className="marks-lightness"
        key={`${of} ${keptShades?.lightness.join() ?? ''} ${String(timesRead)}`}
      >
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
