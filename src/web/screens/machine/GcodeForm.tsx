import { plainDialect, type GcodeDialect } from '../../../core/dialect/gcodeDialect.ts';
import { machineText as words } from '../../../words/texts.ts';
import { Choice } from '../../parts/choice/Choice.tsx';
import { More } from '../../parts/more/More.tsx';
import { CountField } from '../../parts/quantity/CountField.tsx';
import { LinesField } from '../../parts/quantity/LinesField.tsx';
import { useDraft } from '../../state/useDraft.ts';
import { readOwnLines } from './ownLines.ts';

export interface GcodeFormProps {
  /** The id of the machine: drafts are kept under it. */
  readonly machineId: string;
  /** Absent: nobody said, and the plain one is used. */
  readonly dialect: GcodeDialect | undefined;
  readonly onChange: (dialect: GcodeDialect) => void;
}

/** How the machine wants its G-code, for those that take any. */
export const GcodeForm = ({ machineId, dialect = plainDialect, onChange }: GcodeFormProps) => {
  const change = (part: Partial<GcodeDialect>): void => onChange({ ...dialect, ...part });
  return (
    <More title={words.gcode}>
      <p className="small soft">{words.gcodeMore}</p>
      <CountField
        label={words.fullPower}
        value={dialect.sAtFullPower}
        least={1}
        most={1_000_000}
        onChange={(sAtFullPower) => change({ sAtFullPower })}
      />
      <Choice
        label={words.beamPower}
        value={dialect.power}
        options={(['constant', 'speed-following'] as const).map((value) => ({
          value,
          ...words.beamPowers[value],
        }))}
        onChange={(power) => change({ power })}
      />
      <Choice
        label={words.airWord}
        value={dialect.airOn}
        options={(['M8', 'M7'] as const).map((value) => ({ value, label: value }))}
        onChange={(airOn) => change({ airOn })}
      />
      <OwnLines
        name={`${machineId}.opening`}
        label={words.opening}
        hint={words.openingHint}
        lines={dialect.opening}
        onChange={(opening) => change({ opening })}
      />
      <OwnLines
        name={`${machineId}.closing`}
        label={words.closing}
        hint={words.closingHint}
        lines={dialect.closing}
        onChange={(closing) => change({ closing })}
      />
    </More>
  );
};

interface OwnLinesProps {
  readonly name: string;
  readonly label: string;
  readonly hint: string;
  readonly lines: readonly string[];
  readonly onChange: (lines: readonly string[]) => void;
}

/** Stays as typed; what cannot be taken says why and changes nothing. */
const OwnLines = ({ name, label, hint, lines, onChange }: OwnLinesProps) => {
  const [text, setText] = useDraft({ name: `gcode.${name}`, initial: lines.join('\n') });
  const read = readOwnLines(text);
  return (
    <LinesField
      label={label}
      hint={hint}
      value={text}
      problem={read.ok ? undefined : read.problem}
      onChange={(next) => {
        setText(next);
        const outcome = readOwnLines(next);
        if (outcome.ok) onChange(outcome.value);
      }}
    />
  );
};
