import { useMemo } from 'react';
import { acceptMaterial } from '../../../core/stock/acceptMaterial.ts';
import type { NamedMaterial } from '../../../core/stock/namedMaterial.ts';
import { judgeMaterial, type MaterialJudgement } from '../../../core/stock/judgeMaterial.ts';
import { materialClasses } from '../../../core/stock/materials.ts';
import { materialText as words } from '../../../words/texts.ts';
import { Action } from '../action/Action.tsx';
import { MaterialNotice } from './MaterialNotice.tsx';
import { TextLine } from '../quantity/TextLine.tsx';
import { Said } from '../said/Said.tsx';

export interface MaterialFieldProps {
  readonly label: string;
  readonly hint: string;
  readonly value: NamedMaterial;
  /** Another name is another material: what was known of the one before goes with it. */
  readonly onChange: (named: NamedMaterial) => void;
}

const suggestions = materialClasses.map(({ name }) => name.toLowerCase());

/**
 * What the sheet is made of, in the user's own words; what is refused or cautioned says so at once, reason and source. What
 * the name leaves open is asked, and a person says that they have looked.
 */
export const MaterialField = ({ label, hint, value, onChange }: MaterialFieldProps) => {
  const { material, materialKnown } = value;
  const judgement = useMaterial(material);
  return (
    <div className="stack">
      <TextLine
        label={label}
        hint={hint}
        value={material}
        onChange={(text) => onChange({ material: text })}
        suggestions={suggestions}
      />
      {judgement === undefined ? null : <MaterialNotice judgement={judgement} />}
      {judgement?.decision !== 'unknown' ? null : materialKnown === true ? (
        <Said what="done">{words.looked}</Said>
      ) : (
        <div className="actions">
          <Action onPress={() => onChange({ material, materialKnown: true })}>{words.look}</Action>
        </div>
      )}
    </div>
  );
};

/** What is thought of the material typed; undefined while nothing is typed. */
const useMaterial = (text: string): MaterialJudgement | undefined =>
  useMemo(() => (text.trim() === '' ? undefined : judgeMaterial(text)), [text]);

/** Whether a sheet of this may be worked with at all: named, not refused, and looked at where the name leaves it open. */
export const useWorkable = ({ material, materialKnown }: NamedMaterial): boolean =>
  useMemo(
    () =>
      material.trim() !== '' &&
      acceptMaterial({ material, ...(materialKnown === undefined ? {} : { materialKnown }) }).ok,
    [material, materialKnown],
  );
