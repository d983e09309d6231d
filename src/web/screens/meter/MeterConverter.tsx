import { useState } from 'react';
import { currentAt, settingAt, type MeterCurve } from '../../../core/metering/meterCurve.ts';
import type { Problem } from '../../../core/problem.ts';
import { currentWords, powerWords, meterText as words } from '../../../words/texts.ts';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readCurrent, readPower, readShare } from '../../parts/quantity/readers.ts';
import { Said } from '../../parts/said/Said.tsx';

export interface MeterConverterProps {
  readonly curve: MeterCurve;
  readonly ratedMa: number | undefined;
}

/** What a person asked by: the other figures follow from it. */
interface Asked {
  readonly by: 'setting' | 'current';
  readonly value: number;
}

interface Answered {
  readonly powerPct: number | undefined;
  readonly currentMa: number | undefined;
  readonly band: string | undefined;
  readonly problem: Problem | undefined;
}

/** Setting, milliamperes and per cent of rated: type one, read the others. Nothing is said past the readings. */
export const MeterConverter = ({ curve, ratedMa }: MeterConverterProps) => {
  const [asked, setAsked] = useState<Asked>();
  const { powerPct, currentMa, band, problem } = answered(curve, asked);
  const change = (by: Asked['by']) => (value: number | undefined) =>
    setAsked(value === undefined ? undefined : { by, value });
  return (
    <div className="stack">
      <h3>{words.convert}</h3>
      <div className="field-row">
        <QuantityField
          label={words.convertSetting}
          optional
          value={powerPct}
          show={(value) => powerWords(Number(value.toFixed(1)))}
          parse={readPower}
          onChange={change('setting')}
        />
        <QuantityField
          label={words.convertCurrent}
          optional
          value={currentMa}
          show={currentWords}
          parse={readCurrent}
          onChange={change('current')}
        />
        {ratedMa === undefined ? null : (
          <QuantityField
            label={words.convertRated}
            optional
            value={currentMa === undefined ? undefined : (100 * currentMa) / ratedMa}
            show={words.perRated}
            parse={readShare}
            onChange={(share) =>
              change('current')(share === undefined ? undefined : (share / 100) * ratedMa)
            }
          />
        )}
      </div>
      {band === undefined ? null : <Said what="answer">{band}</Said>}
      {problem === undefined ? null : <ProblemNotice tone="say" problem={problem} />}
    </div>
  );
};

const answered = (curve: MeterCurve, asked: Asked | undefined): Answered => {
  const nothing = {
    powerPct: undefined,
    currentMa: undefined,
    band: undefined,
    problem: undefined,
  };
  if (asked === undefined) return nothing;
  const bySetting = asked.by === 'setting';
  const found = bySetting ? currentAt(curve, asked.value) : settingAt(curve, asked.value);
  const known = bySetting ? { powerPct: asked.value } : { currentMa: asked.value };
  if (!found.ok) return { ...nothing, ...known, problem: found.problem };
  const { value, low, high } = found.value;
  const show = bySetting
    ? currentWords
    : (pct: number): string => powerWords(Number(pct.toFixed(1)));
  const band = words.convertBand(show(low), high === null ? null : show(high));
  return bySetting
    ? { powerPct: asked.value, currentMa: value, band, problem: undefined }
    : { powerPct: value, currentMa: asked.value, band, problem: undefined };
};
