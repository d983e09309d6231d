import { colourTrial } from '../core/card/colourTrial.ts';
import { undescribedMachine } from '../core/machine/machine.ts';
import { done, type Outcome } from '../core/problem.ts';
import { fileForMachine } from '../formats/fileForMachine.ts';
import { writeFiles, type NamedFile } from '../host/files.ts';
import { cardText, jobSheetText } from '../words/texts.ts';
import { printOutcome, type ExitCode } from './output.ts';

/** `trial --out DIR`: the colour trial as SVG and DXF, to be loaded in the control program, not cut. */
export const runTrial = async ({ out }: { readonly out: string }): Promise<ExitCode> => {
  const files = await trialFiles();
  const written = files.ok ? await writeFiles(out, files.value) : files;
  return printOutcome(written, (names) => ({
    version: 1,
    files: names,
    strips: trial.layers.length,
    next: jobSheetText.trial(trial.layers.length),
  }));
};

const trial = colourTrial();

/** Made and checked as every file for a machine. Without notes: lettering of its own would be one more entry to count. */
const trialFiles = async (): Promise<Outcome<readonly NamedFile[]>> => {
  const files: NamedFile[] = [];
  for (const kind of ['svg', 'dxf'] as const) {
    const file = await fileForMachine(kind, {
      of: { title: cardText.trialTitle, plainTitle: 'colour trial', drawing: trial },
      machine: undescribedMachine,
    });
    if (!file.ok) return file;
    files.push({ name: `colour-trial.${kind}`, content: file.value });
  }
  return done(files);
};
