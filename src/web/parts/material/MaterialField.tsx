import { useMemo } from 'react';
import { judgeMaterial, type MaterialJudgement } from '../../../core/stock/judgeMaterial.ts';
import { materialClasses } from '../../../core/stock/materials.ts';
import { MaterialNotice } from './MaterialNotice.tsx';
import { TextLine } from '../quantity/TextLine.tsx';

export interface MaterialFieldProps {
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

const suggestions = materialClasses.map(({ name }) => name.toLowerCase());

/** What the sheet is made of, in the user's own words; what is refused or cautioned says so at once, reason and source. */
export const MaterialField = ({ label, hint, value, onChange }: MaterialFieldProps) => {
  const judgement = useMaterial(value);
  return (
    <div className="stack">
      <TextLine
        label={label}
        hint={hint}
        value={value}
        onChange={onChange}
        suggestions={suggestions}
      />
      {judgement === undefined ? null : <MaterialNotice judgement={judgement} />}
    </div>
  );
};

/** What is thought of the material typed; undefined while nothing is typed. */
export const useMaterial = (text: string): MaterialJudgement | undefined =>
  useMemo(() => (text.trim() === '' ? undefined : judgeMaterial(text)), [text]);

/** Whether a sheet of this may be worked with at all: named, and not refused. */
export const isWorkable = (judgement: MaterialJudgement | undefined): boolean =>
  judgement !== undefined && judgement.decision !== 'refuse';
