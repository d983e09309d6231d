import type { PlacedComb } from '../../../core/kerf/combSheet.ts';
import { kerfText as words, lengthWords } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readSize } from '../../parts/quantity/readers.ts';
import { withTime, type KerfDraft } from './kerfDraft.ts';
import { KerfSketch } from './KerfSketch.tsx';

export interface CombReadingProps {
  readonly combs: readonly PlacedComb[];
  readonly draft: KerfDraft;
  readonly onChange: (part: Partial<KerfDraft>) => void;
}

const mostTimes = 5;

/** What was measured: of each comb its strips together and its bar, once or several times. */
export const CombReading = ({ combs, draft, onChange }: CombReadingProps) => {
  const { times } = draft;
  const field = (of: 'strips' | 'bars', label: string, comb: string, i: number) => (
    <QuantityField
      label={label}
      optional
      value={draft[of][comb]?.[i] ?? undefined}
      show={lengthWords}
      parse={readSize}
      onChange={(mm) =>
        onChange({ [of]: { ...draft[of], [comb]: withTime(draft[of][comb], i, mm) } })
      }
    />
  );
  return (
    <Section title={words.read}>
      <KerfSketch />
      <p className="soft">{words.readMore}</p>
      {combs.map(({ label }) => (
        <fieldset key={label} className="kerf-comb">
          <legend className="unseen">{words.combName(label)}</legend>
          {Array.from({ length: times }, (_, i) => (
            <div key={i} className="kerf-pair">
              {field('strips', words.strips(label, i + 1), label, i)}
              {field('bars', words.bar(label, i + 1), label, i)}
            </div>
          ))}
        </fieldset>
      ))}
      {times >= mostTimes ? null : (
        <div className="actions">
          <Action onPress={() => onChange({ times: times + 1 })}>{words.again}</Action>
        </div>
      )}
      <p className="small soft">{words.againMore}</p>
    </Section>
  );
};
