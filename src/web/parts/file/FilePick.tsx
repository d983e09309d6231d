import { Field } from '../quantity/Field.tsx';
import './file.css';

export interface FilePickProps {
  readonly label: string;
  /** Endings of file names to offer. */
  readonly accept: string;
  readonly onText: (name: string, text: string) => void;
}

/** A file from this computer, read as text on this page. */
export const FilePick = ({ label, accept, onText }: FilePickProps) => (
  <Field label={label}>
    {(box) => (
      <input
        {...box}
        type="file"
        className="file-pick"
        accept={accept}
        onChange={({ target }) => {
          const file = target.files?.[0];
          if (file !== undefined) void file.text().then((text) => onText(file.name, text));
        }}
      />
    )}
  </Field>
);
