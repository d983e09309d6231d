import type { Setting } from '../../../core/machine/setting.ts';
import { speedFigure, unitsShown } from '../../../words/texts.ts';

/** The first line of a cell's words. Where cells stand too close for it, the unit is read out but not seen. */
export const CellSpeed = ({ setting }: { readonly setting: Setting }) => {
  return (
    <>
      {speedFigure(setting.speedMmPerS)}
      <span className="cell-unit"> {unitsShown().speed}</span>
    </>
  );
};
