import { plainDialect } from '../../core/dialect/gcodeDialect.ts';
import { ownLinesProblem } from '../../core/dialect/ownLines.ts';
import { done } from '../../core/problem.ts';
import type { MachineFileFormat } from '../fileToMake.ts';

export const gcodeFormat: MachineFileFormat = {
  name: 'G-code',
  contentType: 'text/x-gcode',
  endings: ['gcode', 'nc', 'gc', 'txt'],
  write: async ({ of, machine, dialect = machine.gcode ?? plainDialect, notes }) => {
    if ('drawing' in of && of.timed !== undefined) {
      const { writeTimedGcode } = await import('./writeTimedGcode.ts');
      const problem = ownLinesProblem(dialect);
      return problem === undefined
        ? done(writeTimedGcode(of.timed, dialect, notes ?? []))
        : { ok: false, problem };
    }
    const { writeDrawingGcode, writeGcode } = await import('./writeGcode.ts');
    return 'drawing' in of
      ? writeDrawingGcode({ title: of.plainTitle, drawing: of.drawing }, dialect, notes)
      : writeGcode(of, dialect, notes);
  },
};
