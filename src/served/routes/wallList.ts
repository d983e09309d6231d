import { metricUnits } from '../../core/units/unitPreference.ts';
import { apiOfFiles } from '../../wire/apiOfFiles.ts';
import { pageAnswer } from '../fileAnswer.ts';
import type { Printer } from '../files/printer.ts';
import type { ServedPorts } from '../servedPorts.ts';
import type { Site } from '../site.ts';
import { unitsAsked } from '../unitsAsked.ts';

/** The kept settings for the wall, for the printer. */
export const wallListRoutes = (site: Site, ports: ServedPorts, printer: Printer): void => {
  site.put(apiOfFiles.wallList, async ({ query, gone }) => {
    const { readWallList } = await import('../../app/book/readWallList.ts');
    const list = await readWallList(ports.until(gone));
    const page = await printer.wallList(list, { units: metricUnits, ...unitsAsked(query) });
    return pageAnswer(page, 'wall-list.pdf');
  });
};
