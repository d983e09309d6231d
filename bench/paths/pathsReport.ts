import { launchBrowser } from '../launchBrowser.ts';
import { compareIcons, icons, spread } from './compareIcons.ts';

/** Lines of a report on how near lengths and boxes of drawn paths come to what a browser says. */
export async function* pathsReport(): AsyncGenerator<string> {
  const drawings = icons();
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    const { paths, missing, sameCubics, asItIs } = await compareIcons(page, drawings);
    yield `Lengths and boxes of ${String(paths)} paths of ${String(drawings.length)} icons, against Chromium ${browser.version()}.`;
    yield `Target: none off by more than 1e-4 where both are told the same cubics. Not seen by one of the two: ${String(missing.length)}`;
    for (const [what, errors] of [
      ['arcs as the same cubics', sameCubics],
      ['arcs as they are', asItIs],
    ] as const) {
      for (const of of ['length', 'box'] as const) {
        const { median, worst, worstIcon } = spread(errors, of);
        yield (
          `${what}, ${of}:`.padEnd(34) +
          `median ${median.toExponential(1)}, worst ${worst.toExponential(1)} (${worstIcon})`
        );
      }
    }
  } finally {
    await browser.close();
  }
}
