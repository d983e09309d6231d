import type { LineGroup } from '../../../app/drawing/proveOnDrawing.ts';
import { proofText as words } from '../../../words/texts.ts';

export interface CutGroupsProps {
  readonly groups: readonly LineGroup[];
  /** The names of the groups that are not cut through. */
  readonly leaveOut: readonly string[];
  readonly onCut: (leaveOut: readonly string[]) => void;
}

/** Layers or colours of the drawing, to leave out what is only marked. Nothing where there is but one. */
export const CutGroups = ({ groups, leaveOut, onCut }: CutGroupsProps) => {
  if (groups.length < 2) return null;
  return (
    <fieldset className="proof-groups">
      <legend className="field-label">{words.cut}</legend>
      {groups.map(({ name, lines, cutMm }) => (
        <label key={name} className="proof-group">
          <input
            type="checkbox"
            checked={!leaveOut.includes(name)}
            onChange={() =>
              onCut(
                leaveOut.includes(name)
                  ? leaveOut.filter((other) => other !== name)
                  : [...leaveOut, name],
              )
            }
          />
          <span>{words.group(name, lines, cutMm)}</span>
        </label>
      ))}
    </fieldset>
  );
};
