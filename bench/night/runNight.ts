import { fallsShort, type Figure, type NightPart } from './nightPart.ts';

/** Runs the parts one after the other and tells every figure; a part that breaks is told and counts as one that fell short. */
export const runNight = async (
  parts: readonly NightPart[],
  say: (line: string) => void,
): Promise<'reached' | 'fell-short'> => {
  const short: string[] = [];
  for (const part of parts) {
    say(`${part.name}: ${part.about}`);
    const before = short.length;
    let figures = 0;
    try {
      for await (const figure of part.run()) {
        figures += 1;
        const isShort = fallsShort(figure);
        if (isShort) short.push(`${part.name}: ${figure.what}`);
        say(`  ${isShort ? 'SHORT' : 'ok   '} ${inWords(figure)}`);
        if (isShort) for (const one of figure.cases ?? []) say(`          ${one}`);
      }
    } catch (error) {
      short.push(`${part.name}: ${String(error)}`);
      say(`  SHORT ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    }
    if (figures === 0 && short.length === before) short.push(`${part.name}: measured nothing`);
  }
  say(short.length === 0 ? 'All figures reached.' : `Fell short: ${short.join('; ')}.`);
  return short.length === 0 ? 'reached' : 'fell-short';
};

const inWords = ({ what, value, unit, atLeast, atMost }: Figure): string =>
  [
    `${what}: ${String(Number(value.toPrecision(6)))}${unit === undefined ? '' : ` ${unit}`}`,
    ...(atLeast === undefined ? [] : [`at least ${String(atLeast)}`]),
    ...(atMost === undefined ? [] : [`at most ${String(atMost)}`]),
  ].join(', ');
