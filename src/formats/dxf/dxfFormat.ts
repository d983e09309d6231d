import { done } from '../../core/problem.ts';
import type { MachineFileFormat } from '../fileToMake.ts';

export const dxfFormat: MachineFileFormat = {
  name: 'DXF',
  contentType: 'image/vnd.dxf',
  endings: ['dxf'],
  write: async (make) => {
    const { titledDrawing } = await import('../titledDrawing.ts');
    const { writeDxf } = await import('./writeDxf.ts');
    return done(writeDxf(titledDrawing(make).drawing, make.notes));
  },
};
