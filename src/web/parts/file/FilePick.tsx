import { useState } from 'react';
import { textOfBytes } from '../../../formats/textOfBytes.ts';
import type { Outcome, Problem } from '../../../core/problem.ts';
import { Field } from '../quantity/Field.tsx';
import './file.css';

export interface FilePickProps {
  readonly label: string;
  /** Endings of file names to offer. */
  readonly accept: string;
  /** Refuses a file by its size in bytes; undefined where it may be read. */
  readonly refuse: (bytes: number) => Outcome<never> | undefined;
  readonly onText: (name: string, text: string) => void;
}

const utf8 = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

/** A file from this computer, read as text on this page: unless it is too big, which is said before any of it is read. */
export const FilePick = ({ label, accept, refuse, onText }: FilePickProps) => {
  const [problem, setProblem] = useState<Problem>();
  const pick = (file: File): void => {
    const refused = refuse(file.size);
    setProblem(refused?.ok === false ? refused.problem : undefined);
    if (refused === undefined)
      void file
        .arrayBuffer()
        .then((bytes) => onText(file.name, textOfBytes(new Uint8Array(bytes), utf8)));
  };
  return (
    <Field label={label} problem={problem}>
      {(box) => (
        <input
          {...box}
          type="file"
          className="file-pick"
          accept={accept}
          onChange={({ target }) => {
            const file = target.files?.[0];
            if (file !== undefined) pick(file);
          }}
        />
      )}
    </Field>
  );
};
