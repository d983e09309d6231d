import { done } from '../../core/problem.ts';
import type { MachineFileFormat } from '../fileToMake.ts';

export const svgFormat: MachineFileFormat = {
  name: 'SVG',
  contentType: 'image/svg+xml',
  endings: ['svg'],
  write: async (make) => {
    const { partsOf } = await import('../partsOf.ts');
    const { writeSvg } = await import('./writeSvg.ts');
    const { title, drawing } = partsOf(make);
    return done(writeSvg(drawing, title, make.notes));
  },
};
