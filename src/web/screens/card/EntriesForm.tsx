import { cardText as words } from '../../../words/en/screens/card.ts';
import { Action } from '../../parts/action/Action.tsx';
import { CountField } from '../../parts/quantity/CountField.tsx';
import { saveText } from '../../state/saveText.ts';
import { colourTrialSvg, trialStrips } from './colourTrial.ts';

export interface EntriesFormProps {
  /** What the trial showed; absent: no trial was made. */
  readonly entries: number | undefined;
  readonly onChange: (entries: number | undefined) => void;
}

/** How many entries the control program keeps apart: a card never uses more. */
export const EntriesForm = ({ entries, onChange }: EntriesFormProps) => (
  <div className="stack">
    <p className="small">{words.trial}</p>
    <div className="actions">
      <Action
        kind="quiet"
        onPress={() => saveText('colour-trial.svg', 'image/svg+xml', colourTrialSvg())}
      >
        {words.trialFile}
      </Action>
    </div>
    <div className="field-row">
      <CountField
        label={words.entries}
        value={entries ?? trialStrips}
        least={3}
        most={trialStrips}
        onChange={(count) => onChange(count >= trialStrips ? undefined : count)}
      />
    </div>
  </div>
);
