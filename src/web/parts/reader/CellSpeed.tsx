import { cellWordLines } from '../../../core/card/settingWords.ts';
import type { Setting } from '../../../core/machine/setting.ts';

/** The first line of a cell's words. Where cells stand too close for it, the unit is read out but not seen. */
export const CellSpeed = ({ setting }: { readonly setting: Setting }) => {
  const [figure, unit] = cellWordLines(setting)[0].split(' ');
  return (
    <>
      {figure}
      <span className="cell-unit"> {unit}</span>
    </>
  );
};
