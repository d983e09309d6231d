import { colourTrial } from '../core/card/colourTrial.ts';
import { writeDxf } from '../formats/dxf/writeDxf.ts';
import { writeSvg } from '../formats/svg/writeSvg.ts';
import { writeFiles } from '../host/files.ts';
import { jobSheetText } from '../words/texts.ts';
import { printOutcome, type ExitCode } from './output.ts';

/** `trial --out DIR`: the colour trial as SVG and DXF, to be loaded in the control program, not cut. */
export const runTrial = async ({ out }: { readonly out: string }): Promise<ExitCode> => {
  const trial = colourTrial();
  const written = await writeFiles(out, [
    { name: 'colour-trial.svg', content: writeSvg(trial, 'Colour trial') },
    { name: 'colour-trial.dxf', content: writeDxf(trial) },
  ]);
  return printOutcome(written, (files) => ({
    version: 1,
    files,
    strips: trial.layers.length,
    next: jobSheetText.trial(trial.layers.length),
  }));
};
