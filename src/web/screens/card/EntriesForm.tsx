import { colourTrial } from '../../../core/card/colourTrial.ts';
import { writeDxf } from '../../../formats/dxf/writeDxf.ts';
import { writeSvg } from '../../../formats/svg/writeSvg.ts';
import { cardText as words } from '../../../words/en/screens/card.ts';
import { Action } from '../../parts/action/Action.tsx';
import { CountField } from '../../parts/quantity/CountField.tsx';
import { saveText } from '../../state/saveText.ts';

export interface EntriesFormProps {
  /** What the trial showed; absent: no trial was made. */
  readonly entries: number | undefined;
  readonly onChange: (entries: number | undefined) => void;
}

const trial = colourTrial();
const strips = trial.layers.length;

/** How many entries the control program keeps apart: a card never uses more. */
export const EntriesForm = ({ entries, onChange }: EntriesFormProps) => (
  <div className="stack">
    <p className="small">{words.trial(strips)}</p>
    <div className="actions">
      <Action
        kind="quiet"
        onPress={() =>
          saveText('colour-trial.svg', 'image/svg+xml', writeSvg(trial, words.trialTitle))
        }
      >
        {words.trialSvg}
      </Action>
      <Action
        kind="quiet"
        onPress={() => saveText('colour-trial.dxf', 'image/vnd.dxf', writeDxf(trial))}
      >
        {words.trialDxf}
      </Action>
    </div>
    <div className="field-row">
      <CountField
        label={words.entries}
        value={entries ?? strips}
        least={3}
        most={strips}
        onChange={(count) => onChange(count >= strips ? undefined : count)}
      />
    </div>
  </div>
);
