import { checkGauge, focusAdvice, servedThicknessMm } from '../../../core/focus/focusAdvice.ts';
import type { FocusEstimate } from '../../../core/focus/focusTest.ts';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import type { Study } from '../../../core/study/study.ts';
import { lengthWords, focusText as words } from '../../../words/texts.ts';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readThickness } from '../../parts/quantity/readers.ts';
import { useDraft } from '../../state/useDraft.ts';
import { Said } from '../../parts/said/Said.tsx';

export interface FocusSaysProps {
  readonly found: FocusEstimate;
  readonly gaugeMm: number | undefined;
  readonly study: Study | undefined;
}

/** The height, how sure it is, how deep the focus is, whether the gauge is right, and where a sheet is to lie. */
export const FocusSays = ({ found, gaugeMm, study }: FocusSaysProps) => {
  const { gapMm, rayleighMm, remarks } = found;
  return (
    <div className="stack">
      <Said what="answer" className="focus-sentences">
        <p className="focus-gap">{words.sentence(found)}</p>
        {gaugeMm === undefined ? null : (
          <p>{words.gaugeSays(gaugeMm, checkGauge(gaugeMm, gapMm, rayleighMm))}</p>
        )}
        {rayleighMm === null ? null : (
          <p>
            {words.depth(rayleighMm)} {words.serves(servedThicknessMm(rayleighMm, gapMm))}
          </p>
        )}
        <p className="small soft">{words.measured}</p>
      </Said>
      {remarks.map((remark) => (
        <ProblemNotice key={remark.code} tone="say" problem={remark} />
      ))}
      {rayleighMm === null ? null : (
        <IntoTheSheet gapMm={gapMm.value} rayleighMm={rayleighMm.value} study={study} />
      )}
    </div>
  );
};

interface IntoTheSheetProps extends Pick<FocusSaysProps, 'study'> {
  readonly gapMm: number;
  readonly rayleighMm: number;
}

const IntoTheSheet = ({ gapMm, rayleighMm, study }: IntoTheSheetProps) => {
  const [thicknessMm, setThicknessMm] = useDraft({
    name: 'focus.thickness',
    initial: study === undefined ? 3 : stockThicknessMm(study.stock),
  });
  const advice = focusAdvice({ gapMm, rayleighMm, thicknessMm });
  return (
    <div className="stack">
      <h3>{words.surface}</h3>
      <QuantityField
        label={words.thickness}
        value={thicknessMm}
        show={lengthWords}
        parse={readThickness}
        onChange={(mm) => {
          if (mm !== undefined && mm > 0) setThicknessMm(mm);
        }}
      />
      {advice.ok ? (
        <>
          <p>{words.advice(thicknessMm, advice.value)}</p>
          <p className="small soft">{words.adviceMore}</p>
        </>
      ) : (
        <ProblemNotice tone="care" problem={advice.problem} />
      )}
    </div>
  );
};
