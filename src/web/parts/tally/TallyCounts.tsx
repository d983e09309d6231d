import { flawKindOf } from '../../../core/stock/flawKind.ts';
import { tallyText as words } from '../../../words/texts.ts';
import { CountField } from '../quantity/CountField.tsx';
import { Said } from '../said/Said.tsx';
import './tally.css';

/** What was counted: parts cut, and of those the ones that gave trouble. What remains came out. */
export interface Counts {
  readonly cut: number;
  readonly hangs: number;
  readonly stays: number;
  readonly spoilt: number;
}

export const noneCounted: Counts = { cut: 0, hangs: 0, stays: 0, spoilt: 0 };

/** Of the parts cut, those that came out; less than none where the counts cannot be. */
export const cameOut = ({ cut, hangs, stays, spoilt }: Counts): number =>
  cut - hangs - stays - spoilt;

const most = 100_000;

export interface TallyCountsProps {
  readonly counts: Counts;
  /** What the sheet is made of: a flaw is called what it has. */
  readonly material: string;
  readonly onChange: (counts: Counts) => void;
}

/** The four counts of an order, and what they come to. */
export const TallyCounts = ({ counts, material, onChange }: TallyCountsProps) => {
  const out = cameOut(counts);
  const count = (name: keyof Counts, label: string) => (
    <CountField
      label={label}
      value={counts[name]}
      least={0}
      most={most}
      onChange={(value) => onChange({ ...counts, [name]: value })}
    />
  );
  return (
    <>
      <div className="field-row">
        {count('cut', words.cut)}
        {count('hangs', words.knife)}
        {count('stays', words.stays)}
        {count('spoilt', words.flaw[flawKindOf(material)])}
      </div>
      <p className="small soft">{words.pushed}</p>
      <Said what="wrong">{out < 0 ? words.tooMany : ''}</Said>
      {out >= 0 && counts.cut > 0 ? <p>{words.line({ ...counts, out })}.</p> : null}
    </>
  );
};
