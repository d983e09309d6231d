import type { NoteField } from '../../../core/card/jobSheet.ts';
import { takeText as words } from '../../../words/en/screens/machine.ts';

/** Places for a pencil on the printed page. */
export const NotePlaces = ({ fields }: { readonly fields: readonly NoteField[] }) => (
  <dl className="notes">
    {fields.map((field) => (
      <div key={field}>
        <dt>{words.noteFields[field]}</dt>
        <dd />
      </div>
    ))}
  </dl>
);
