import { done } from '../../core/problem.ts';
import type { MachineFileFormat } from '../fileToMake.ts';

export const dxfFormat: MachineFileFormat = {
  name: 'DXF',
  contentType: 'image/vnd.dxf',
  endings: ['dxf'],
  write: async (make) => {
    const { partsOf } = await import('../partsOf.ts');
    const { writeDxf } = await import('./writeDxf.ts');
    return done(writeDxf(partsOf(make).drawing, make.notes));
  },
};
