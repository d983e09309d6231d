import { authorNamed } from '../../core/author.ts';
import { problemOf } from '../../core/problem.ts';
import { FileAnswer } from '../../served/fileAnswer.ts';
import { readAsked } from '../../served/readAsked.ts';
import type { Ask, Site } from '../../served/site.ts';
import type { Route } from '../../wire/route.ts';
import type { PlaceAsked, PlaceReply } from './messages.ts';
import { jsonType, refusalReply, thrownReply } from './refusalReply.ts';

/** Routes that can be asked within this page, in the form that a server answers them in. */
export interface OpenSite extends Site {
  readonly ask: (asked: PlaceAsked, gone: AbortSignal) => Promise<PlaceReply>;
}

interface Put {
  readonly route: Route;
  readonly ask: Ask<Route>;
  readonly pattern: RegExp;
}

/** A place for routes. */
export const openSite = (): OpenSite => {
  const all: Put[] = [];
  const answered = async (asked: PlaceAsked, gone: AbortSignal): Promise<PlaceReply> => {
    const { pathname, searchParams } = new URL(asked.address, 'http://here');
    const found = all.find(
      ({ route, pattern }) => route.method === asked.method && pattern.test(pathname),
    );
    if (found === undefined)
      return refusalReply(problemOf('no-such-address', { address: pathname }));
    const { route, ask, pattern } = found;
    const names = Object.entries(pattern.exec(pathname)?.groups ?? {});
    const read = readAsked(
      route,
      {
        params: Object.fromEntries(names.map(([name, text]) => [name, decodeURIComponent(text)])),
        query: Object.fromEntries(searchParams),
        body: bodyOf(asked),
        author: authorNamed(asked.by),
      },
      gone,
    );
    if (!read.ok) return refusalReply(read.problem);
    const outcome = await ask(read.value);
    if (!outcome.ok) return refusalReply(outcome.problem);
    return outcome.value instanceof FileAnswer
      ? fileReply(outcome.value)
      : jsonReply(outcome.value);
  };
  return {
    put: (route, ask) => {
      const pattern = new RegExp(`^${route.path.replace(/:([A-Za-z]+)/g, '(?<$1>[^/]+)')}$`);
      // Each is asked with what was read by its own shapes.
      all.push({ route, ask: ask, pattern });
    },
    ask: async (asked, gone) => {
      try {
        return await answered(asked, gone);
      } catch (thrown) {
        return thrownReply(thrown);
      }
    },
  };
};

const bodyOf = ({ contentType = '', body }: PlaceAsked): unknown =>
  typeof body === 'string' && contentType.startsWith('application/json') ? JSON.parse(body) : body;

const jsonReply = (value: unknown): PlaceReply => ({
  status: 200,
  contentType: jsonType,
  body: value === undefined ? '' : JSON.stringify(value),
});

const fileReply = ({ contentType, disposition, body }: FileAnswer): PlaceReply => ({
  status: 200,
  contentType,
  body: typeof body === 'object' && 'pieces' in body ? [...body.pieces].join('') : body,
  ...(disposition === undefined ? {} : { disposition }),
});
