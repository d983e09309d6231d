import { nightParts } from './parts.ts';
import { runNight } from './runNight.ts';

// `npm run night`: every part; `npm run night -- files`: the named ones. Ends with 1 where a figure falls short.
const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => nightParts.every((part) => part.name !== name));
const say = (line: string): void => {
  process.stdout.write(`${line}\n`);
};
if (unknown.length > 0) {
  say(`No part ${unknown.join(', ')}; there are ${nightParts.map(({ name }) => name).join(', ')}.`);
  process.exitCode = 1;
} else {
  const parts = nightParts.filter(({ name }) => wanted.length === 0 || wanted.includes(name));
  process.exitCode = (await runNight(parts, say)) === 'reached' ? 0 : 1;
}
