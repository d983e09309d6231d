import type { NightPart } from './nightPart.ts';
import { runTests } from './runTests.ts';

/** Each brings the page into several situations, a test each. */
const files = ['nothingLost', 'tabs', 'pageAlone'].map((name) => `test/e2e/${name}.test.ts`);

/** What the page does in Chromium when the server says no, dies, hangs, or when the browser keeps nothing. */
export const pagePart: NightPart = {
  name: 'page',
  about: 'what was tapped is kept in every situation that the page gets into, in Chromium',
  run: () => runTests(files, { atLeast: 15 }),
};
