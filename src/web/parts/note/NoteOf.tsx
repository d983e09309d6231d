import { useState } from 'react';
import { noteText as words } from '../../../words/texts.ts';
import { useDraft } from '../../state/useDraft.ts';
import type { Takes } from '../../state/role.ts';
import { Action } from '../action/Action.tsx';
import { IfMay } from '../action/IfMay.tsx';
import { More } from '../more/More.tsx';
import { LinesField } from '../quantity/LinesField.tsx';
import { readLine } from '../quantity/readLine.ts';
import { readNote } from '../quantity/readNote.ts';
import { TextLine } from '../quantity/TextLine.tsx';
import { Said } from '../said/Said.tsx';
import './note.css';

export interface NoteOfProps {
  /** One for each thing that has a note. */
  readonly name: string;
  readonly kind: 'sheet' | 'card' | 'entry' | 'job';
  readonly label: string;
  readonly note: string | undefined;
  /** The route by which it is kept. */
  readonly calls: Takes;
  /** Undefined: it is taken away. */
  readonly onKeep: (note: string | undefined) => void;
}

/** A note on something, or its name: shown where there is one, and written, changed or taken away one click below. */
export const NoteOf = (props: NoteOfProps) => {
  const { name, kind, label, note, calls } = props;
  const [said, setSaid] = useState<string>();
  return (
    <div className="note-of">
      {note === undefined ? null : (
        <p className="note-text">
          <span className="soft small">{label}</span> {note}
        </p>
      )}
      <IfMay call={calls}>
        <More title={note === undefined ? words.write[kind] : words.change[kind]}>
          <Written key={`${name} ${note ?? ''}`} {...props} onSaid={setSaid} />
          {said === undefined ? null : <Said what="done">{said}</Said>}
        </More>
      </IfMay>
    </div>
  );
};

const Written = ({
  name,
  kind,
  label,
  note = '',
  onKeep,
  onSaid,
}: NoteOfProps & { readonly onSaid: (said: string | undefined) => void }) => {
  const [text, setText, sent] = useDraft({ name: `note.${name}`, initial: note });
  const read = kind === 'job' ? readLine(text) : readNote(text);
  const change = (typed: string): void => {
    setText(typed);
    onSaid(undefined);
  };
  return (
    <div className="stack">
      {kind === 'job' ? (
        <TextLine label={label} hint={words.jobHint} value={text} onChange={change} />
      ) : (
        <LinesField
          label={label}
          hint={words.hint}
          value={text}
          problem={read.ok ? undefined : read.problem}
          isProse
          onChange={change}
        />
      )}
      <div className="actions">
        <Action
          isDisabled={!read.ok || text.trim() === note.trim()}
          keepsTyped
          onPress={() => {
            sent();
            const kept = text.trim();
            onKeep(kept === '' ? undefined : kept);
            onSaid(kept === '' ? words.gone : words.kept);
          }}
        >
          {words.keep}
        </Action>
      </div>
    </div>
  );
};
