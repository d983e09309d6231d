import { useId } from 'react';
import './file.css';

export interface FilePickProps {
  readonly label: string;
  /** Endings of file names to offer. */
  readonly accept: string;
  readonly onText: (name: string, text: string) => void;
}

/** A file from this computer, read as text on this page. */
export const FilePick = ({ label, accept, onText }: FilePickProps) => {
  const id = useId();
  return (
    <div className="quantity">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <input
        id={id}
        type="file"
        className="file-pick"
        accept={accept}
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file !== undefined) void file.text().then((text) => onText(file.name, text));
        }}
      />
    </div>
  );
};
