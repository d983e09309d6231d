import { andThen, type Outcome } from '../core/problem.ts';
import { parseJsonText } from '../formats/border.ts';
import { readStdin, readTextFile } from '../host/files.ts';

type Parse<T> = (json: unknown) => Outcome<T>;

const parsed = <T>(text: Outcome<string>, parse: Parse<T>): Outcome<T> =>
  andThen(text, (read) => andThen(parseJsonText(read), parse));

/** What a JSON file holds, parsed. */
export const readJsonFile = async <T>(path: string, parse: Parse<T>): Promise<Outcome<T>> =>
  parsed(await readTextFile(path), parse);

/** What is piped in as JSON, parsed. */
export const readJsonPiped = async <T>(parse: Parse<T>): Promise<Outcome<T>> =>
  parsed(await readStdin(), parse);
