import { done } from '../../core/problem.ts';
import type { MachineFileFormat } from '../fileToMake.ts';

export const svgFormat: MachineFileFormat = {
  name: 'SVG',
  contentType: 'image/svg+xml',
  endings: ['svg'],
  write: async (make) => {
    const { titledDrawing } = await import('../titledDrawing.ts');
    const { writeSvg } = await import('./writeSvg.ts');
    const { title, drawing } = titledDrawing(make);
    return done(writeSvg(drawing, title, make.notes));
  },
};
