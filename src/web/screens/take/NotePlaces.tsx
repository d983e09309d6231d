import type { NoteField } from '../../../core/card/jobSheet.ts';
import { jobSheetText as words } from '../../../words/texts.ts';

/** Places for a pencil on the printed page. */
export const NotePlaces = ({ fields }: { readonly fields: readonly NoteField[] }) => (
  <dl className="notes">
    {fields.map((field) => (
      <div key={field}>
        <dt>{words.note(field)}</dt>
        <dd />
      </div>
    ))}
  </dl>
);
